/** Lets the page come back without a network: its files and the last answers of the server stay in the browser. */

/** Registers the service worker, and tells it what this page has loaded already, so that the first visit is kept too. */
export function keepForOffline(): void {
  // Only of a built page; while it is developed, old files would come back.
  if (!import.meta.env.PROD || !('serviceWorker' in navigator)) return;
  const tell = (): void => {
    const loaded = performance.getEntriesByType('resource').map(({ name }) => name);
    const own = loaded.filter((url) => url.startsWith(location.origin) && !/\.tif$/.test(url));
    navigator.serviceWorker.controller?.postMessage([...new Set(own)]);
  };
  navigator.serviceWorker.addEventListener('message', tell);
  navigator.serviceWorker.register('/offline.js').then(
    () => setTimeout(tell, 10_000),
    () => undefined,
  );
}
