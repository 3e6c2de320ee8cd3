/** A large text file, line by line. */
import { closeSync, openSync, writeSync } from 'node:fs';

/** A file written in pieces of a megabyte, all of it on disk after `end`. */
export class LineFile {
  private readonly file: number;
  private waiting: string[] = [];
  private length = 0;

  constructor(path: string) {
    this.file = openSync(path, 'w');
  }

  write(text: string): void {
    this.waiting.push(text);
    this.length += text.length;
    if (this.length > 1_000_000) {
      this.flush();
    }
  }

  end(): void {
    this.flush();
    closeSync(this.file);
  }

  private flush(): void {
    writeSync(this.file, this.waiting.join(''));
    this.waiting = [];
    this.length = 0;
  }
}
