// Sends what a device has written to the server as soon as it can be reached. Nothing is dropped
// before the server has confirmed it or its writer has said so.
import { api, askedToSignIn } from '../api.js';
import * as database from './database.js';
import { attempt, Bell, BY_ITSELF, newId, newStamp, queue } from './sending.js';

const BATCH = 100;
const PICTURE_PATIENCE_MS = 120_000;
const changed = new Bell();
const oneByOne = queue();

/** Calls `listener()` whenever what is kept has changed; returns what ends that. */
export function onChange(listener) {
  return changed.listen(listener);
}

/**
 * Keeps an entry and sends it when possible. `base` is the revision it was made from, 0 if new.
 * `photo` is {blob, replaces} for a new one, {replaces} to take that one away, null to forget one
 * that has not been sent.
 */
export async function write(siteId, entry, { base = 0, deleted = false, photo } = {}) {
  await database.keep(
    { id: entry.id, siteId, entry, baseRevision: base, deleted, state: 'waiting', stamp: newStamp() },
    photo && { id: entry.id, siteId, ...photo, state: 'waiting', stamp: newStamp() },
  );
  changed.ring();
  const outcome = await sync(siteId);
  // Only who has just written is asked to sign in; what is sent by itself waits without a word.
  return outcome === 'forbidden' && (await askedToSignIn()) ? sync(siteId) : outcome;
}

/** Takes a change back that the server does not have. */
export async function drop({ id, baseRevision }) {
  await database.forget(id);
  if (baseRevision === 0) {
    await database.forgetPicture(id);
  }
  changed.ring();
}

/** Takes a photo back that the server does not have. */
export async function dropPhoto(id) {
  await database.forgetPicture(id);
  changed.ring();
}

/** Settles a conflict: `mine` over theirs, `theirs`, or `both` side by side. */
export async function settle(change, choice) {
  if (choice === 'theirs') {
    await database.forget(change.id);
  } else if (choice === 'mine') {
    // A photo that came too late for an entry that was deleted comes in time once it is back.
    const picture = (await database.pictures(change.siteId)).find(({ id, state }) => id === change.id && state === 'refused');
    await database.keep(
      { ...change, state: 'waiting', baseRevision: change.theirs.revision, theirs: undefined, stamp: newStamp() },
      picture && { ...picture, state: 'waiting', stamp: newStamp() },
    );
  } else {
    const id = newId();
    await database.keepAside(
      { ...change, id, entry: { ...change.entry, id }, state: 'waiting', baseRevision: 0, deleted: false, theirs: undefined, stamp: newStamp() },
      change.id,
    );
  }
  changed.ring();
  return sync(change.siteId);
}

/**
 * Everything of a site's journal that a device can show: entries with the changes over them and over
 * their photos.
 */
export async function journalOf(siteId) {
  const [entries, changes, pictures] = await Promise.all([database.entries(siteId), database.changes(siteId), database.pictures(siteId)]);
  const pictureOf = new Map(pictures.map((picture) => [picture.id, picture]));
  // An entry that was deleted elsewhere still shows the photo that came too late for it.
  const byId = new Map(entries.filter((entry) => !entry.deleted || pictureOf.get(entry.id)?.blob).map((entry) => [entry.id, { entry }]));
  for (const change of changes) {
    const known = byId.get(change.id)?.entry;
    byId.set(change.id, { entry: { revision: known?.revision, author: known?.author, photo: known?.photo, ...change.entry }, change });
  }
  return [...byId.values()]
    .map((one) => ({ ...one, picture: pictureOf.get(one.entry.id) }))
    .sort((a, b) => (a.entry.day < b.entry.day ? 1 : a.entry.day > b.entry.day ? -1 : 0));
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
      if (outcome === 'forbidden' && waiting.length > 0) {
        // Who may not write any more may still read.
        await send(siteId, []);
      }
      break;
    }
    if (waiting.length < BATCH) {
      break;
    }
  }
  if (outcome === 'done' || outcome === 'refused') {
    const pictures = await sendPictures(siteId);
    outcome = outcome === 'done' ? pictures : outcome;
  }
  changed.ring();
  return outcome;
}

/** Sends the photos whose entries the server has and of which nothing has to be chosen first. */
async function sendPictures(siteId) {
  const waiting = (await database.pictures(siteId)).filter((picture) => picture.state === 'waiting');
  if (waiting.length === 0) {
    return 'done';
  }
  const unsent = new Set((await database.changes(siteId)).filter((change) => change.state !== 'refused').map((change) => change.id));
  const entries = new Map((await database.entries(siteId)).map((entry) => [entry.id, entry]));
  let outcome = 'done';
  for (const picture of waiting.filter(({ id }) => entries.has(id) && !unsent.has(id))) {
    const told = await sendPicture(siteId, picture, entries.get(picture.id));
    if (told.outcome === 'done') {
      await database.takeOverPicture(siteId, picture, told.answer);
    } else if (told.outcome === 'invalid' || told.status === 404) {
      await database.refusePicture(picture, told.message);
      outcome = 'refused';
    } else {
      return told.outcome;
    }
  }
  return outcome;
}

async function sendPicture(siteId, { id, blob, replaces }, entry) {
  const path = `/sites/${encodeURIComponent(siteId)}/journal/${encodeURIComponent(id)}/photo`;
  // Only the photo that was seen here is taken away, never one that somebody has added since.
  if (replaces && entry.photo?.path === replaces) {
    const gone = await attempt(() => api.delete(path, undefined, BY_ITSELF));
    if (gone.outcome !== 'done' || !blob) {
      return gone;
    }
  }
  return blob
    ? attempt(() => api.post(path, blob, { ...BY_ITSELF, type: blob.type, signal: AbortSignal.timeout(PICTURE_PATIENCE_MS) }))
    : { outcome: 'done' };
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
  const path = `/sites/${encodeURIComponent(siteId)}/journal/sync`;
  const since = await database.mark(siteId);
  const changes = waiting.map(({ entry, baseRevision, deleted }) => ({ ...entry, baseRevision, deleted }));
  const told = await attempt(() =>
    changes.length ? api.post(path, { since, changes }, BY_ITSELF) : api.get(`${path}?since=${since}`, BY_ITSELF),
  );
  if (told.outcome === 'done') {
    await database.takeOver(siteId, told.answer, waiting);
  }
  return told;
}
