/** Photos as they leave the phone: small enough for a poor line, and without anything the camera wrote beside the picture. */

/** Longer side. Enough to see a gall; about 400 kB. */
const SIDE_PX = 2000;
const QUALITY = 0.82;

/**
 * The picture drawn anew, upright, at most 2,000 pixels long: EXIF, and with it position, camera and thumbnails, stay
 * behind. `sha256` names its bytes as the server does; null where the browser reckons none (plain HTTP).
 */
export async function fieldPhoto(file: Blob): Promise<{ readonly photo: Blob; readonly sha256: string | null }> {
  const picture = await createImageBitmap(file, { imageOrientation: 'from-image' });
  const scale = Math.min(1, SIDE_PX / Math.max(picture.width, picture.height));
  const canvas = new OffscreenCanvas(Math.round(picture.width * scale), Math.round(picture.height * scale));
  canvas.getContext('2d')?.drawImage(picture, 0, 0, canvas.width, canvas.height);
  picture.close();
  const photo = await canvas.convertToBlob({ type: 'image/jpeg', quality: QUALITY });
  return { photo, sha256: await sha256Of(photo) };
}

async function sha256Of(blob: Blob): Promise<string | null> {
  if (!('subtle' in crypto)) return null;
  const digest = new Uint8Array(await crypto.subtle.digest('SHA-256', await blob.arrayBuffer()));
  return Array.from(digest, (byte) => byte.toString(16).padStart(2, '0')).join('');
}
