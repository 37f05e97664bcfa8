// What a device keeps of the journal: entries it knows, and changes the server has not confirmed.

const NAME = 'grovewright';
const VERSION = 1;

let opened;

function open() {
  opened ??= new Promise((resolve, reject) => {
    const request = indexedDB.open(NAME, VERSION);
    request.onupgradeneeded = () => {
      const database = request.result;
      database.createObjectStore('changes', { keyPath: 'id' }).createIndex('site', 'siteId');
      database.createObjectStore('entries', { keyPath: ['siteId', 'id'] }).createIndex('site', 'siteId');
      database.createObjectStore('marks', { keyPath: 'siteId' });
    };
    request.onsuccess = () => resolve(request.result);
    request.onerror = () => reject(request.error);
  });
  return opened;
}

function done(request) {
  return new Promise((resolve, reject) => {
    request.onsuccess = () => resolve(request.result);
    request.onerror = () => reject(request.error);
  });
}

/** Runs `work(stores)` in one transaction; it has been written to disk when this returns. */
export async function within(names, mode, work) {
  const database = await open();
  const transaction = database.transaction(names, mode, { durability: 'strict' });
  const finished = new Promise((resolve, reject) => {
    transaction.oncomplete = () => resolve();
    transaction.onabort = () => reject(transaction.error);
    transaction.onerror = () => reject(transaction.error);
  });
  const answer = await work(Object.fromEntries(names.map((name) => [name, transaction.objectStore(name)])));
  await finished;
  return answer;
}

/** Changes of a site that wait for the server or for the owner. */
export function changes(siteId) {
  return within(['changes'], 'readonly', (stores) => done(stores.changes.index('site').getAll(siteId)));
}

/** Entries of a site as the server last told them. */
export function entries(siteId) {
  return within(['entries'], 'readonly', (stores) => done(stores.entries.index('site').getAll(siteId)));
}

/** Number up to which this device knows the journal of a site. */
export async function mark(siteId) {
  const known = await within(['marks'], 'readonly', (stores) => done(stores.marks.get(siteId)));
  return known?.upTo ?? 0;
}

/** Keeps a change until the server has confirmed it. */
export function keep(change) {
  return within(['changes'], 'readwrite', (stores) => done(stores.changes.put(change)));
}

/** Forgets a change. */
export function forget(id) {
  return within(['changes'], 'readwrite', (stores) => done(stores.changes.delete(id)));
}

/**
 * Takes over what the server told. A change that was made anew while it was under way (another
 * `stamp`) stays, and builds on the revision that was just confirmed.
 */
export function takeOver(siteId, answer, sent) {
  return within(['changes', 'entries', 'marks'], 'readwrite', async (stores) => {
    const theirs = new Map(answer.conflicts.map((entry) => [entry.id, entry]));
    const told = new Map(answer.entries.map((entry) => [entry.id, entry]));
    for (const entry of [...answer.entries, ...answer.conflicts]) {
      await done(stores.entries.put({ ...entry, siteId }));
    }
    for (const change of sent) {
      const now = await done(stores.changes.get(change.id));
      if (!now) {
        continue;
      }
      if (theirs.has(change.id)) {
        await done(stores.changes.put({ ...now, state: 'conflict', theirs: theirs.get(change.id) }));
      } else if (now.stamp === change.stamp) {
        await done(stores.changes.delete(change.id));
      } else {
        await done(stores.changes.put({ ...now, baseRevision: told.get(change.id)?.revision ?? now.baseRevision }));
      }
    }
    await done(stores.marks.put({ siteId, upTo: answer.upTo }));
  });
}
