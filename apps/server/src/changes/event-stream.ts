/** Server-sent events (WHATWG HTML, section 9.2): how open pages follow the journal. */
import type { ServerResponse } from 'node:http';
import type { Change } from '@crownfall/exchange';

/** Comments keep proxies from closing a silent connection. */
const HEARTBEAT_MS = 15_000;
/** A listener that does not read is let go once so much waits for it; it comes back with its last number. */
const MOST_WAITING_BYTES = 1 << 20;

export class EventStream {
  readonly #response: ServerResponse;
  readonly #heartbeat: NodeJS.Timeout;

  /** Takes over a response whose head has not been sent. */
  constructor(response: ServerResponse, headers: Readonly<Record<string, string>>) {
    this.#response = response;
    response.writeHead(200, {
      ...headers,
      'content-type': 'text/event-stream; charset=utf-8',
      'cache-control': 'no-store',
      'x-accel-buffering': 'no',
    });
    response.write('retry: 2000\n\n');
    this.#heartbeat = setInterval(() => this.#write(': here\n\n'), HEARTBEAT_MS);
    response.on('close', () => clearInterval(this.#heartbeat));
  }

  /** The number of a change is the event's id, so that a listener can resume after it. */
  changes(changes: readonly Change[]): void {
    this.#write(changes.map((change) => `id: ${change.change}\nevent: change\n${data(change)}`).join(''));
  }

  event(name: string, body: object): void {
    this.#write(`event: ${name}\n${data(body)}`);
  }

  end(): void {
    clearInterval(this.#heartbeat);
    this.#response.end();
  }

  #write(text: string): void {
    if (this.#response.writableEnded || this.#response.destroyed) return;
    if (this.#response.writableLength > MOST_WAITING_BYTES) this.#response.destroy();
    else this.#response.write(text);
  }
}

/** JSON holds no line breaks, so one data line is enough. */
const data = (body: object): string => `data: ${JSON.stringify(body)}\n\n`;
