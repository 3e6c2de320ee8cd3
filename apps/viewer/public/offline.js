/**
 * The service worker. Files of the page carry their content's hash in their names, so what is kept is right for good. The page
 * itself and the server's answers come from the network first, and from what was kept when there is none.
 */
const KEPT = 'crownfall-1';
const NAMED_BY_CONTENT = /\/assets\//;

self.addEventListener('install', () => self.skipWaiting());
self.addEventListener('activate', (event) => event.waitUntil(keepOpenPage()));
self.addEventListener('fetch', (event) => {
  const { request } = event;
  const url = new URL(request.url);
  if (request.method !== 'GET' || url.origin !== location.origin || request.headers.has('range')) return;
  // Streams of changes never end and cannot be kept.
  if (request.headers.get('accept') === 'text/event-stream') return;
  event.respondWith(NAMED_BY_CONTENT.test(url.pathname) ? keptFirst(request) : networkFirst(request));
});

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
  const kept = await cache.match(request);
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
