/**
 * Differences undone: TIFF 6.0, section 14 (predictor 2) and Adobe Photoshop TIFF Technical Note 3 (predictor 3, floating
 * point), in place. Each row of a block stands for itself.
 */

export interface Rows {
  readonly width: number;
  /** Samples of a pixel that stand together. */
  readonly together: number;
  readonly bytesPerSample: number;
}

/** Predictor 2 on samples that are in the machine's byte order already: each is the difference from the pixel before. */
export function undoDifferences(
  samples: Uint8Array | Uint16Array | Uint32Array,
  { width, together }: Pick<Rows, 'width' | 'together'>,
): void {
  const row = width * together;
  for (let start = 0; start < samples.length; start += row) {
    const end = Math.min(start + row, samples.length);
    for (let i = start + together; i < end; i++) samples[i] += samples[i - together];
  }
}

/** Predictor 3: bytes are differenced across the row, and stand by significance, the highest of every sample first. */
export function undoFloatDifferences(bytes: Uint8Array, { width, together, bytesPerSample }: Rows): void {
  const samples = width * together;
  const row = samples * bytesPerSample;
  const sorted = new Uint8Array(row);
  for (let start = 0; start + row <= bytes.length; start += row) {
    const part = bytes.subarray(start, start + row);
    for (let i = together; i < row; i++) part[i] += part[i - together];
    for (let i = 0; i < samples; i++) {
      for (let b = 0; b < bytesPerSample; b++)
        sorted[i * bytesPerSample + b] = part[(bytesPerSample - 1 - b) * samples + i];
    }
    part.set(sorted);
  }
}
