// What of the shopping list is bought already, shared by all devices of a site. A tick is kept on
// the device first and stays there until the server has it.
import { api } from '../api.js';
import * as database from './database.js';
import { attempt, Bell, BY_ITSELF, newStamp, queue } from './sending.js';

const BATCH = 500;
const PATIENCE_MS = 20_000;
/** Ticks of before they were shared say nothing of when they were made: all others are later. */
const LONG_AGO = '1970-01-01T00:00:01Z';

const changed = new Bell();
const oneByOne = queue();

/** Calls `listener()` whenever what is known of ticks has changed; returns what ends that. */
export function onTicks(listener) {
  return changed.listen(listener);
}

/**
 * How the items of a site stand, as this device knows: a map from an item's key to {ticked,
 * author, at, change}, where `change` is what of it has not been sent or wants to be looked at.
 */
export async function ticksOf(siteId) {
  const [known, changes] = await Promise.all([database.ticks(siteId), database.tickChanges(siteId)]);
  const ticks = new Map(known.map(({ item, ticked, author, at }) => [item, { ticked, author, at }]));
  for (const change of changes) {
    const before = ticks.get(change.item);
    ticks.set(change.item, change.state === 'conflict' ? { ...before, change } : { ticked: change.ticked, change });
  }
  return ticks;
}

/** Keeps a tick, or that there is none, and sends it when possible; returns what became of it. */
export async function tick(siteId, item, ticked) {
  await keep(siteId, item, ticked);
  return syncTicks(siteId);
}

function keep(siteId, item, ticked) {
  return database.changeTick(siteId, item, (known, earlier) => ({
    siteId,
    item,
    ticked,
    // Whoever changes what he sees means it to hold, though his clock be behind another's.
    at: after(known?.at),
    seen: known?.at,
    // Words of this device that may have arrived although no answer came back.
    own: earlier?.state === 'waiting' ? [...earlier.own, earlier.at] : [],
    state: 'waiting',
    stamp: newStamp(),
  }));
}

function after(at) {
  return new Date(Math.max(Date.now(), at ? Date.parse(at) + 1 : 0)).toISOString();
}

/** The owner has seen that somebody else said something different. */
export async function settleTick(siteId, item) {
  await database.forgetTickChange(siteId, item);
  changed.ring();
}

/** Takes over ticks from the time when each browser kept its own. */
export async function takeOverOld(siteId) {
  const name = `bought:${siteId}`;
  let old;
  try {
    old = JSON.parse(localStorage.getItem(name) ?? 'null');
  } catch {
    old = null;
  }
  if (Array.isArray(old)) {
    for (const item of old.filter((one) => typeof one === 'string')) {
      await database.changeTick(siteId, item, (known, earlier) =>
        known || earlier ? undefined : { siteId, item, ticked: true, at: LONG_AGO, own: [], state: 'waiting', stamp: newStamp() },
      );
    }
    localStorage.removeItem(name);
  }
}

/** Sends and fetches; returns 'done', 'unreachable', 'refused' or 'forbidden'. */
export function syncTicks(siteId) {
  return oneByOne(() => exchange(siteId));
}

async function exchange(siteId) {
  let outcome = 'done';
  for (;;) {
    const waiting = (await database.tickChanges(siteId)).filter((change) => change.state === 'waiting').slice(0, BATCH);
    const told = await send(siteId, waiting);
    if (told.outcome === 'invalid' && waiting.length > 0) {
      outcome = 'refused';
      await separately(siteId, waiting);
    } else if (told.outcome !== 'done') {
      outcome = told.outcome;
      if (outcome === 'forbidden' && waiting.length > 0) {
        // Who may not tick any more may still look.
        await send(siteId, []);
      }
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
    const told = await send(siteId, [change]);
    if (told.outcome === 'invalid') {
      await database.changeTick(siteId, change.item, (known, now) =>
        now?.stamp === change.stamp ? { ...now, state: 'refused', why: told.message } : undefined,
      );
    } else if (told.outcome !== 'done') {
      return;
    }
  }
}

async function send(siteId, waiting) {
  const path = `/sites/${encodeURIComponent(siteId)}/ticks`;
  const options = { ...BY_ITSELF, signal: AbortSignal.timeout(PATIENCE_MS) };
  const told = await attempt(() =>
    waiting.length
      ? api.put(path, { ticks: waiting.map(({ item, ticked, at, seen }) => ({ item, ticked, at, seen })) }, options)
      : api.get(path, options),
  );
  if (told.outcome === 'done') {
    await database.takeOverTicks(siteId, told.answer, waiting, after);
  }
  return told;
}
