/**
 * Where the bytes of an image come from. The room itself touches no disk and no network: a port over an array, a Blob, an
 * open file or a server that answers range requests is handed in.
 */

/** Reads are concurrent. Fewer bytes than asked for come back at the end of the source only. */
export interface BytesPort {
  /** In bytes; null when not known beforehand. */
  readonly size: number | null;
  readonly read: (offset: number, length: number, signal?: Cancellation) => Promise<Uint8Array>;
}

/** Of an `AbortSignal`, what is looked at here. */
export interface Cancellation {
  readonly aborted: boolean;
}

/** A port over bytes already in memory. */
export function bytesPort(bytes: Uint8Array): BytesPort {
  return { size: bytes.length, read: async (offset, length) => copied(bytes.subarray(offset, offset + length)) };
}

/** `slice` would not do: that of Node's `Buffer` copies nothing. */
export function copied(bytes: Uint8Array): Uint8Array {
  return new Uint8Array(bytes);
}

/** Of a `Blob` or `File`, what is used here. */
export interface BlobLike {
  readonly size: number;
  slice(start: number, end: number): { arrayBuffer(): Promise<ArrayBuffer> };
}

/** A port over a Blob or a File that the user chose; nothing but the ranges asked for is loaded. */
export function blobPort(blob: BlobLike): BytesPort {
  return {
    size: blob.size,
    read: async (offset, length) => new Uint8Array(await blob.slice(offset, offset + length).arrayBuffer()),
  };
}

/** Of Node's `FileHandle`, what is used here. */
export interface FileHandleLike {
  read(into: Uint8Array, start: number, length: number, position: number): Promise<{ readonly bytesRead: number }>;
}

/** A port over an open file of `size` bytes; whoever opened it closes it. */
export function fileHandlePort(handle: FileHandleLike, size: number): BytesPort {
  return {
    size,
    read: async (offset, length) => {
      const into = new Uint8Array(Math.max(0, Math.min(length, size - offset)));
      let filled = 0;
      while (filled < into.length) {
        const { bytesRead } = await handle.read(into, filled, into.length - filled, offset + filled);
        if (bytesRead === 0) break;
        filled += bytesRead;
      }
      return into.subarray(0, filled);
    },
  };
}
