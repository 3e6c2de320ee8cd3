/**
 * The service worker. Files of the page carry their content's hash in their names, so what is kept is right for good. The page
 * itself and the server's answers come from the network first, and from what was kept when there is none. The walk, which is
 * used where the network is poor, is kept whole when this worker is installed and then always comes from here.
 */
const KEPT = 'crownfall-1';
const WALK = [
  /* files of the walk */
];
const NAMED_BY_CONTENT = /\/assets\//;

self.addEventListener('install', (event) => event.waitUntil(keepWalk()));
self.addEventListener('activate', (event) => event.waitUntil(keepOpenPage()));
self.addEventListener('fetch', (event) => {
  const { request } = event;
  const url = new URL(request.url);
  if (request.method !== 'GET' || url.origin !== location.origin || request.headers.has('range')) return;
  // Whoever asks for fresh answers wants none that was kept.
  if (request.headers.has('crownfall-fresh')) return;
  // Streams of changes never end and cannot be kept.
  if (request.headers.get('accept') === 'text/event-stream') return;
  const isKept = NAMED_BY_CONTENT.test(url.pathname) || WALK.includes(url.pathname);
  event.respondWith(isKept ? keptFirst(request) : networkFirst(request));
});

/** All or nothing: a walk half kept would break under the trees. Until it is whole, the worker before this one goes on. */
async function keepWalk() {
  const cache = await caches.open(KEPT);
  await cache.addAll(WALK.map((path) => new Request(path, { cache: 'reload' })));
  await self.skipWaiting();
}

/** The first visit loaded its files before this worker stood: they are fetched once more, for keeping. */
async function keepOpenPage() {
  await self.clients.claim();
  const cache = await caches.open(KEPT);
  for (const client of await self.clients.matchAll({ type: 'window' })) client.postMessage('keep');
  await cache.add('/').catch(() => undefined);
}

self.addEventListener('message', (event) => {
  if (!Array.isArray(event.data)) return;
  event.waitUntil(
    caches.open(KEPT).then((cache) =>
      Promise.all(
        event.data.map(async (url) => {
          if ((await cache.match(url)) === undefined) await cache.add(url).catch(() => undefined);
        }),
      ),
    ),
  );
});

async function keptFirst(request) {
  const cache = await caches.open(KEPT);
  // What the walk is opened with (?open=, #block=) changes no file.
  const kept = await cache.match(request, { ignoreSearch: request.mode === 'navigate' });
  if (kept) return kept;
  const fresh = await fetch(request);
  if (fresh.ok) await cache.put(request, fresh.clone());
  return fresh;
}

async function networkFirst(request) {
  const cache = await caches.open(KEPT);
  try {
    const fresh = await fetch(request);
    if (fresh.ok) await cache.put(request, fresh.clone());
    return fresh;
  } catch (error) {
    const kept = await cache.match(request, { ignoreSearch: request.mode === 'navigate' });
    if (kept) return kept;
    throw error;
  }
}
