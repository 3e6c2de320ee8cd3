/** A name that nothing else bears. */

/** 128 random bits as hexadecimal digits; unlike a UUID of the browser, to be had over plain HTTP too. */
export function newId(): string {
  const bytes = crypto.getRandomValues(new Uint8Array(16));
  return Array.from(bytes, (byte) => byte.toString(16).padStart(2, '0')).join('');
}
