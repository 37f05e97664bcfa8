// What a device keeps of the journal and the shopping list: what it knows of them, and changes the
// server has not confirmed.

const NAME = 'grovewright';
const VERSION = 2;

let opened;

function open() {
  opened ??= new Promise((resolve, reject) => {
    const request = indexedDB.open(NAME, VERSION);
    request.onupgradeneeded = (event) => {
      const database = request.result;
      if (event.oldVersion < 1) {
        database.createObjectStore('changes', { keyPath: 'id' }).createIndex('site', 'siteId');
        database.createObjectStore('entries', { keyPath: ['siteId', 'id'] }).createIndex('site', 'siteId');
        database.createObjectStore('marks', { keyPath: 'siteId' });
      }
      if (event.oldVersion < 2) {
        database.createObjectStore('ticks', { keyPath: ['siteId', 'item'] }).createIndex('site', 'siteId');
        database.createObjectStore('tickChanges', { keyPath: ['siteId', 'item'] }).createIndex('site', 'siteId');
        database.createObjectStore('pictures', { keyPath: 'id' }).createIndex('site', 'siteId');
      }
    };
    request.onsuccess = () => {
      // A newer page in another tab must not wait for this one.
      request.result.onversionchange = () => {
        request.result.close();
        opened = undefined;
      };
      resolve(request.result);
    };
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

/** Sites of which a store holds something that waits for the server. */
export async function sitesWaiting(name) {
  const all = await within([name], 'readonly', (stores) => done(stores[name].getAll()));
  return new Set(all.filter((one) => one.state === 'waiting').map((one) => one.siteId));
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

/** Photos of a site that wait for the server or for the owner. */
export function pictures(siteId) {
  return within(['pictures'], 'readonly', (stores) => done(stores.pictures.index('site').getAll(siteId)));
}

/**
 * Keeps a change until the server has confirmed it, together with a change of its photo, if there
 * is one: null forgets one that has not been sent.
 */
export function keep(change, picture) {
  return within(['changes', 'pictures'], 'readwrite', async (stores) => {
    await done(stores.changes.put(change));
    if (picture) {
      await done(stores.pictures.put(picture));
    } else if (picture === null) {
      await done(stores.pictures.delete(change.id));
    }
  });
}

/** Keeps a change under a new id, with the photo that waited under the old one. */
export function keepAside(change, oldId) {
  return within(['changes', 'pictures'], 'readwrite', async (stores) => {
    const picture = await done(stores.pictures.get(oldId));
    if (picture?.blob) {
      await done(stores.pictures.put({ ...picture, id: change.id, replaces: undefined, state: 'waiting' }));
      await done(stores.pictures.delete(oldId));
    }
    await done(stores.changes.put(change));
    await done(stores.changes.delete(oldId));
  });
}

/** Forgets a photo that has not been sent. */
export function forgetPicture(id) {
  return within(['pictures'], 'readwrite', (stores) => done(stores.pictures.delete(id)));
}

/** Keeps a photo that the server refused, unless another one was chosen meanwhile. */
export function refusePicture(sent, why) {
  return within(['pictures'], 'readwrite', async (stores) => {
    const now = await done(stores.pictures.get(sent.id));
    if (now?.stamp === sent.stamp) {
      await done(stores.pictures.put({ ...now, state: 'refused', why }));
    }
  });
}

/** Takes over that the server has done what a change of a photo wanted; `photo` tells of a new one. */
export function takeOverPicture(siteId, sent, photo) {
  return within(['entries', 'pictures'], 'readwrite', async (stores) => {
    const entry = await done(stores.entries.get([siteId, sent.id]));
    if (entry && (photo || entry.photo?.path === sent.replaces)) {
      await done(stores.entries.put({ ...entry, photo }));
    }
    const now = await done(stores.pictures.get(sent.id));
    if (now?.stamp === sent.stamp) {
      await done(stores.pictures.delete(sent.id));
    } else if (now) {
      await done(stores.pictures.put({ ...now, replaces: photo?.path ?? now.replaces }));
    }
  });
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

/** What the server last told of ticks of a site. */
export function ticks(siteId) {
  return within(['ticks'], 'readonly', (stores) => done(stores.ticks.index('site').getAll(siteId)));
}

/** Ticks of a site that wait for the server or for the owner. */
export function tickChanges(siteId) {
  return within(['tickChanges'], 'readonly', (stores) => done(stores.tickChanges.index('site').getAll(siteId)));
}

/**
 * Puts what `make(known, earlier)` gives in the place of an earlier change of an item, where
 * `known` is what the server last told of it; nothing if that gives nothing.
 */
export function changeTick(siteId, item, make) {
  return within(['ticks', 'tickChanges'], 'readwrite', async (stores) => {
    const known = await done(stores.ticks.get([siteId, item]));
    const change = make(known, await done(stores.tickChanges.get([siteId, item])));
    if (change) {
      await done(stores.tickChanges.put(change));
    }
  });
}

/** Forgets a change of a tick. */
export function forgetTickChange(siteId, item) {
  return within(['tickChanges'], 'readwrite', (stores) => done(stores.tickChanges.delete([siteId, item])));
}

/**
 * Takes over what the server told of ticks. A tick that was changed anew while it was under way
 * (another `stamp`) stays, and is said after the one that has just arrived: at `after(its time)`.
 */
export function takeOverTicks(siteId, answer, sent, after) {
  return within(['ticks', 'tickChanges'], 'readwrite', async (stores) => {
    const told = new Map(answer.ticks.map((tick) => [tick.item, tick]));
    const conflicts = new Map((answer.conflicts ?? []).map((one) => [one.item, one]));
    for (const key of await done(stores.ticks.index('site').getAllKeys(siteId))) {
      if (!told.has(key[1])) {
        await done(stores.ticks.delete(key));
      }
    }
    for (const tick of answer.ticks) {
      await done(stores.ticks.put({ ...tick, siteId }));
    }
    for (const { item, own, stamp } of sent) {
      const now = await done(stores.tickChanges.get([siteId, item]));
      if (!now) {
        continue;
      }
      const conflict = conflicts.get(item);
      const mine = own.some((at) => Date.parse(at) === Date.parse(conflict?.other.at));
      if (now.stamp !== stamp) {
        const seen = told.get(item)?.at;
        await done(stores.tickChanges.put(conflict && !conflict.kept ? now : { ...now, seen, at: after(seen) }));
      } else if (conflict && !mine) {
        await done(stores.tickChanges.put({ ...now, state: 'conflict', kept: conflict.kept, other: conflict.other }));
      } else {
        await done(stores.tickChanges.delete([siteId, item]));
      }
    }
  });
}
