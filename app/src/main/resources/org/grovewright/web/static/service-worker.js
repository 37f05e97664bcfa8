// Keeps the application and the pages last seen, and shows them when the server cannot be reached.
// The server always comes first, so that nobody reads an old plan while it is there.

const SHELL = 'shell-1';
const PAGES = 'pages-1';
const PHOTOS = 'photos-1';
const MOST_PHOTOS = 60;
const PATIENCE_MS = 8000;

const FILES = [
  '/',
  '/static/app.css',
  '/static/pages.css',
  '/static/icon.svg',
  '/static/app.js',
  '/static/api.js',
  '/static/dom.js',
  '/static/forms.js',
  '/static/i18n.js',
  '/static/icons.js',
  '/static/offline.js',
  '/static/paper.js',
  '/static/sign-in.js',
  '/static/sites.js',
  '/static/garden/amounts.js',
  '/static/garden/database.js',
  '/static/garden/journal.js',
  '/static/garden/picture.js',
  '/static/garden/queue.js',
  '/static/garden/sending.js',
  '/static/garden/ticks.js',
  '/static/map/geometry.js',
  '/static/map/photo.js',
  '/static/pages/accounts.js',
  '/static/pages/buy.js',
  '/static/pages/common.js',
  '/static/pages/plant.js',
  '/static/pages/plants.js',
  '/static/pages/settings.js',
  '/static/pages/today.js',
  '/static/pages/water.js',
  '/static/pages/working.js',
];

/** What is worth keeping of the API: reading, in the garden, what was read before. */
const KEPT = /^\/api\/(?:me|sites|texts\/[a-z]+|sites\/[^/]+|sites\/[^/]+\/(?:pages\/.+|figures\/.+))$/;

const PHOTO = /^\/api\/sites\/[^/]+\/journal\/[^/]+\/photo$/;

self.addEventListener('install', (event) => {
  event.waitUntil(
    caches
      .open(SHELL)
      .then((cache) => Promise.all(FILES.map((file) => cache.add(new Request(file, { cache: 'no-cache' })).catch(() => undefined))))
      .then(() => self.skipWaiting()),
  );
});

self.addEventListener('activate', (event) => {
  event.waitUntil(
    caches
      .keys()
      .then((names) => Promise.all(names.filter((name) => ![SHELL, PAGES, PHOTOS].includes(name)).map((name) => caches.delete(name))))
      .then(() => self.clients.claim()),
  );
});

self.addEventListener('message', (event) => {
  if (event.data === 'forget') {
    event.waitUntil(Promise.all([caches.delete(PAGES), caches.delete(PHOTOS)]));
  }
});

self.addEventListener('fetch', (event) => {
  const { request } = event;
  const url = new URL(request.url);
  if (request.method !== 'GET' || url.origin !== self.location.origin) {
    return;
  }
  if (request.mode === 'navigate' && !url.pathname.startsWith('/api/') && !url.pathname.startsWith('/calendar/')) {
    event.respondWith(first(request, SHELL, '/'));
  } else if (url.pathname.startsWith('/static/')) {
    event.respondWith(first(request, SHELL, url.pathname));
  } else if (KEPT.test(url.pathname)) {
    event.respondWith(first(request, PAGES, keyOf(url), true));
  } else if (PHOTO.test(url.pathname)) {
    const answer = first(request, PHOTOS, url.pathname + url.search);
    event.respondWith(answer);
    event.waitUntil(answer.then(() => onlyNewest(PHOTOS, MOST_PHOTOS)).catch(() => undefined));
  }
});

/** A page of another day stands in for today's: the newest is what the garden gets. */
function keyOf(url) {
  const key = new URL(url);
  key.searchParams.delete('date');
  return key.pathname + key.search;
}

/** The server's answer, which is kept; without the server, what was kept. */
async function first(request, name, key, dated = false) {
  const cache = await caches.open(name);
  const kept = await cache.match(key);
  try {
    // A plan in the making may take its time; only who has something to show need not wait for it.
    const answer = kept ? await timely(request) : await fetch(request);
    if (answer.ok && answer.type === 'basic') {
      await cache.put(key, dated ? await withMoment(answer.clone()) : answer.clone());
    } else if (dated && (answer.status === 401 || answer.status === 404)) {
      await cache.delete(key);
    }
    return answer;
  } catch (problem) {
    if (!kept) {
      throw problem;
    }
    return dated ? told(kept) : kept;
  }
}

async function onlyNewest(name, most) {
  const cache = await caches.open(name);
  const keys = await cache.keys();
  await Promise.all(keys.slice(0, Math.max(0, keys.length - most)).map((key) => cache.delete(key)));
}

function timely(request) {
  const stop = new AbortController();
  const timer = setTimeout(() => stop.abort(), PATIENCE_MS);
  return fetch(request, { signal: stop.signal }).finally(() => clearTimeout(timer));
}

async function withMoment(answer) {
  const headers = new Headers(answer.headers);
  headers.set('X-Kept', new Date().toISOString());
  return new Response(await answer.blob(), { status: 200, headers });
}

/** A kept page says when it was kept. */
async function told(kept) {
  const page = await kept.json();
  const told1 = Array.isArray(page) ? page : { ...page, keptAt: kept.headers.get('X-Kept') };
  return new Response(JSON.stringify(told1), { headers: { 'Content-Type': 'application/json' } });
}
