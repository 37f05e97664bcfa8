// Lets the pages work where there is no connection: keeps them on the device, and sends what was
// written there as soon as the server can be reached again.
import { sitesWaiting } from './garden/database.js';
import { sync } from './garden/queue.js';
import { syncTicks } from './garden/ticks.js';

const AGAIN_MS = 30_000;

/** Whether this browser, at this address, can show the pages without a connection. */
export function canWorkAlone() {
  return 'serviceWorker' in navigator && window.isSecureContext;
}

async function sendAll() {
  for (const site of new Set([...(await sitesWaiting('changes')), ...(await sitesWaiting('pictures'))])) {
    await sync(site);
  }
  for (const site of await sitesWaiting('tickChanges')) {
    await syncTicks(site);
  }
}

/** Forgets all pages kept on this device; called on signing out. Unsent entries, photos and ticks stay. */
export async function forgetPages() {
  const worker = navigator.serviceWorker?.controller;
  worker?.postMessage('forget');
}

/**
 * Fetches pages of a site that may be wanted in the garden, so that they are kept although nobody
 * has opened them; once for each state of the plan.
 */
export async function keepForGarden(site, fetchers) {
  if (!canWorkAlone() || !site || site.offline) {
    return;
  }
  const mark = `kept:${site.id}:${site.version}:${document.documentElement.lang}:${fetchers.length}`;
  if (sessionStorage.getItem(mark)) {
    return;
  }
  await navigator.serviceWorker.ready;
  if (!navigator.serviceWorker.controller) {
    await new Promise((resolve) => navigator.serviceWorker.addEventListener('controllerchange', resolve, { once: true }));
  }
  for (const fetcher of fetchers) {
    try {
      await fetcher();
    } catch {
      // What cannot be had now is fetched the next time.
      return;
    }
  }
  sessionStorage.setItem(mark, 'yes');
}

/** Starts keeping and sending. */
export function start() {
  const send = () => sendAll().catch((problem) => console.error(problem));
  window.addEventListener('online', send);
  setInterval(send, AGAIN_MS);
  send();
  if (canWorkAlone()) {
    navigator.serviceWorker.register('/service-worker.js').catch((problem) => console.error(problem));
  }
}
