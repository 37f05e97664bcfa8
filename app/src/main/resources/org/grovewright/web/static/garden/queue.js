// Sends what a device has written to the server as soon as it can be reached. Nothing is dropped
// before the server has confirmed it or its writer has said so.
import { api, useToken } from '../api.js';
import * as database from './database.js';

const BATCH = 100;
const listeners = new Set();
let running;

/** Calls `listener()` whenever what is kept has changed; returns what ends that. */
export function onChange(listener) {
  listeners.add(listener);
  return () => listeners.delete(listener);
}

function tell() {
  listeners.forEach((listener) => listener());
}

/** A name for an entry that no other has. */
export function newId() {
  // randomUUID is only there in secure contexts; a phone in the garden may use plain http.
  const bytes = crypto.getRandomValues(new Uint8Array(16));
  return [...bytes].map((byte) => byte.toString(16).padStart(2, '0')).join('');
}

function stamp() {
  return `${Date.now()}-${newId().slice(0, 8)}`;
}

/** Keeps an entry and sends it when possible. `base` is the revision it was made from, 0 if new. */
export async function write(siteId, entry, base = 0, deleted = false) {
  await database.keep({ id: entry.id, siteId, entry, baseRevision: base, deleted, state: 'waiting', stamp: stamp() });
  tell();
  return sync(siteId);
}

/** Takes a change back that the server does not have. */
export async function drop(id) {
  await database.forget(id);
  tell();
}

/** Settles a conflict: `mine` over theirs, `theirs`, or `both` side by side. */
export async function settle(change, choice) {
  if (choice === 'theirs') {
    await database.forget(change.id);
  } else if (choice === 'mine') {
    await database.keep({ ...change, state: 'waiting', baseRevision: change.theirs.revision, theirs: undefined, stamp: stamp() });
  } else {
    const id = newId();
    await database.keep({ ...change, id, entry: { ...change.entry, id }, state: 'waiting', baseRevision: 0, deleted: false, theirs: undefined, stamp: stamp() });
    await database.forget(change.id);
  }
  tell();
  return sync(change.siteId);
}

/** Everything of a site's journal that a device can show: entries with the changes over them. */
export async function journalOf(siteId) {
  const [entries, changes] = await Promise.all([database.entries(siteId), database.changes(siteId)]);
  const byId = new Map(entries.filter((entry) => !entry.deleted).map((entry) => [entry.id, { entry }]));
  for (const change of changes) {
    const known = byId.get(change.id)?.entry;
    byId.set(change.id, { entry: { revision: known?.revision, author: known?.author, ...change.entry }, change });
  }
  return [...byId.values()].sort((a, b) => (a.entry.day < b.entry.day ? 1 : a.entry.day > b.entry.day ? -1 : 0));
}

/** Sends and fetches; returns 'done', 'unreachable', 'refused' or 'forbidden'. */
export function sync(siteId) {
  running = (running ?? Promise.resolve()).then(() => exchange(siteId)).catch((problem) => {
    console.error(problem);
    return 'refused';
  });
  return running;
}

async function exchange(siteId) {
  let outcome = 'done';
  for (;;) {
    const waiting = (await database.changes(siteId)).filter((change) => change.state === 'waiting').slice(0, BATCH);
    const answer = await send(siteId, waiting);
    if (answer.outcome === 'invalid') {
      await oneByOne(siteId, waiting);
      outcome = 'refused';
    } else if (answer.outcome !== 'done') {
      outcome = answer.outcome;
      break;
    }
    if (waiting.length < BATCH) {
      break;
    }
  }
  tell();
  return outcome;
}

async function oneByOne(siteId, waiting) {
  for (const change of waiting) {
    const answer = await send(siteId, [change]);
    if (answer.outcome === 'invalid') {
      await database.keep({ ...change, state: 'refused', why: answer.message });
    } else if (answer.outcome !== 'done') {
      return;
    }
  }
}

async function send(siteId, waiting, again = false) {
  const body = {
    since: await database.mark(siteId),
    changes: waiting.map(({ entry, baseRevision, deleted }) => ({ ...entry, baseRevision, deleted })),
  };
  try {
    const answer = await api.post(`/sites/${encodeURIComponent(siteId)}/journal/sync`, body);
    await database.takeOver(siteId, answer, waiting);
    return { outcome: 'done' };
  } catch (problem) {
    if (problem.status === 0) {
      return { outcome: 'unreachable' };
    }
    if (problem.code === 'csrf' && !again) {
      // The program was started anew since this page was loaded.
      useToken((await api.get('/me')).csrf);
      return send(siteId, waiting, true);
    }
    if (problem.status === 422 || problem.status === 400) {
      return { outcome: 'invalid', message: problem.message };
    }
    return { outcome: problem.status === 403 || problem.status === 401 ? 'forbidden' : 'unreachable', message: problem.message };
  }
}
