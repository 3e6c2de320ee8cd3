/** What the server tells browsers they may do, and which names it answers to. */

/**
 * The page loads only from this server: no other script, picture, font or request. `data:` and `blob:` pictures are the map
 * library's own icons and textures. `background`: address of map tiles that the page may fetch as well.
 */
export const securityHeaders = (background: string | null): Readonly<Record<string, string>> => ({
  'content-security-policy': [
    "default-src 'none'",
    // WebAssembly: the solver of the plan, in the page's worker.
    "script-src 'self' 'wasm-unsafe-eval'",
    "worker-src 'self'",
    "style-src 'self'",
    "img-src 'self' data: blob:",
    "font-src 'self'",
    "manifest-src 'self'",
    background === null ? "connect-src 'self'" : `connect-src 'self' ${new URL(background).origin}`,
    "base-uri 'none'",
    "form-action 'none'",
    "frame-ancestors 'none'",
  ].join('; '),
  'x-content-type-options': 'nosniff',
  'referrer-policy': 'no-referrer',
  // With the next line: lets the page's workers share memory.
  'cross-origin-opener-policy': 'same-origin',
  'cross-origin-embedder-policy': 'require-corp',
  'cross-origin-resource-policy': 'same-origin',
});

export const LOOPBACK = ['localhost', '127.0.0.1', '[::1]', '::1'];

/**
 * Whether a request with this Host header may be answered by a server bound to `boundTo`. Bound to loopback, only loopback
 * names are, and that of the public address: a foreign web page that points its own name at this machine (DNS rebinding)
 * gets nothing.
 */
export function answersTo(hostHeader: string | undefined, boundTo: string, publicUrl: string | null = null): boolean {
  if (!LOOPBACK.includes(boundTo)) return true;
  const name = (hostHeader ?? '').replace(/:\d+$/, '').toLowerCase();
  return LOOPBACK.includes(name) || (publicUrl !== null && name === new URL(publicUrl).hostname);
}
