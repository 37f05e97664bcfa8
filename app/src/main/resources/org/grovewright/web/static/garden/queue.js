// Sends what a device has written to the server as soon as it can be reached. Nothing is dropped
// before the server has confirmed it or its writer has said so.
import { api } from '../api.js';
import * as database from './database.js';
import { attempt, Bell, newId, newStamp, queue } from './sending.js';

const BATCH = 100;
const changed = new Bell();
const oneByOne = queue();

/** Calls `listener()` whenever what is kept has changed; returns what ends that. */
export function onChange(listener) {
  return changed.listen(listener);
}

/** Keeps an entry and sends it when possible. `base` is the revision it was made from, 0 if new. */
export async function write(siteId, entry, base = 0, deleted = false) {
  await database.keep({ id: entry.id, siteId, entry, baseRevision: base, deleted, state: 'waiting', stamp: newStamp() });
  changed.ring();
  return sync(siteId);
}

/** Takes a change back that the server does not have. */
export async function drop(id) {
  await database.forget(id);
  changed.ring();
}

/** Settles a conflict: `mine` over theirs, `theirs`, or `both` side by side. */
export async function settle(change, choice) {
  if (choice === 'theirs') {
    await database.forget(change.id);
  } else if (choice === 'mine') {
    await database.keep({ ...change, state: 'waiting', baseRevision: change.theirs.revision, theirs: undefined, stamp: newStamp() });
  } else {
    const id = newId();
    await database.keep({ ...change, id, entry: { ...change.entry, id }, state: 'waiting', baseRevision: 0, deleted: false, theirs: undefined, stamp: newStamp() });
    await database.forget(change.id);
  }
  changed.ring();
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
  return oneByOne(() => exchange(siteId));
}

async function exchange(siteId) {
  let outcome = 'done';
  for (;;) {
    const waiting = (await database.changes(siteId)).filter((change) => change.state === 'waiting').slice(0, BATCH);
    const answer = await send(siteId, waiting);
    if (answer.outcome === 'invalid') {
      await separately(siteId, waiting);
      outcome = 'refused';
    } else if (answer.outcome !== 'done') {
      outcome = answer.outcome;
      break;
    }
    if (waiting.length < BATCH) {
      break;
    }
  }
  changed.ring();
  return outcome;
}

async function separately(siteId, waiting) {
  for (const change of waiting) {
    const answer = await send(siteId, [change]);
    if (answer.outcome === 'invalid') {
      await database.keep({ ...change, state: 'refused', why: answer.message });
    } else if (answer.outcome !== 'done') {
      return;
    }
  }
}

async function send(siteId, waiting) {
  const body = {
    since: await database.mark(siteId),
    changes: waiting.map(({ entry, baseRevision, deleted }) => ({ ...entry, baseRevision, deleted })),
  };
  const told = await attempt(() => api.post(`/sites/${encodeURIComponent(siteId)}/journal/sync`, body));
  if (told.outcome === 'done') {
    await database.takeOver(siteId, told.answer, waiting);
  }
  return told;
}
