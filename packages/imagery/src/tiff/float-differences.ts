/** Differences of floating-point samples undone (Adobe Photoshop TIFF Technical Note 3, predictor 3). */

export interface FloatRows {
  readonly width: number;
  /** Samples of a pixel that stand together. */
  readonly together: number;
  readonly bytesPerSample: number;
}

/** In place: bytes are differenced across the row, and stand by significance, the highest of every sample first. */
export function undoFloatDifferences(bytes: Uint8Array, { width, together, bytesPerSample }: FloatRows): void {
  const samples = width * together;
  const row = samples * bytesPerSample;
  const sorted = new Uint8Array(row);
  for (let start = 0; start + row <= bytes.length; start += row) {
    const part = bytes.subarray(start, start + row);
    for (let i = together; i < row; i++) part[i] += part[i - together];
    for (let i = 0; i < samples; i++) {
      for (let b = 0; b < bytesPerSample; b++) {
        sorted[i * bytesPerSample + b] = part[(bytesPerSample - 1 - b) * samples + i];
      }
    }
    part.set(sorted);
  }
}
