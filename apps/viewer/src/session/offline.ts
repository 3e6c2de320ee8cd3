/** Lets the page come back without a network: its files and the last answers of the server stay in the browser. */

const loaded = new Set<string>();

/** Registers the service worker, and tells it what this page has loaded already, so that the first visit is kept too. */
export function keepForOffline(): void {
  // Only of a built page; while it is developed, old files would come back.
  if (!import.meta.env.PROD || !('serviceWorker' in navigator)) return;
  navigator.serviceWorker.addEventListener('message', tell);
  navigator.serviceWorker.register('/offline.js').then(
    () => setTimeout(tell, 10_000),
    () => undefined,
  );
}

/** Notes what a worker of this page has loaded: the page itself does not see it. */
export function keepLoaded(addresses: readonly string[]): void {
  for (const address of addresses) loaded.add(address);
  tell();
}

function tell(): void {
  for (const { name } of performance.getEntriesByType('resource')) loaded.add(name);
  // Pictures are read in parts, which are not kept.
  const own = [...loaded].filter((url) => url.startsWith(location.origin) && !/\.tif$/.test(url));
  navigator.serviceWorker?.controller?.postMessage(own);
}
