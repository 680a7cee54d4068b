import type { ServerResponse } from 'node:http';

/** An open answer of server-sent events (HTML Living Standard, section 9.2). */
export interface EventStream {
  readonly send: (event: string, data: unknown) => void;
  readonly end: () => void;
}

/** Oftener than the server closes a quiet connection, and often enough that a page knows a dead line within seconds. */
const BEAT_MS = 5000;
/** One that reads nothing is cut off at so much waiting for it, bytes; it comes back for the newest. */
const MOST_WAITING = 512 * 1024;

/** Opens a stream. `onEnd` is called once, whoever ends it. */
export function eventStream(response: ServerResponse, onEnd: () => void): EventStream {
  response.writeHead(200, {
    'content-type': 'text/event-stream; charset=utf-8',
    'cache-control': 'no-store',
    'x-accel-buffering': 'no',
  });
  const write = (text: string) => {
    if (response.destroyed) return;
    response.write(text);
    if (response.writableLength > MOST_WAITING) response.destroy();
  };
  const beat = setInterval(() => write(':\n\n'), BEAT_MS);
  beat.unref();
  response.once('close', () => {
    clearInterval(beat);
    onEnd();
  });
  write(':\n\n');
  return {
    send: (event, data) =>
      write(`event: ${event}\ndata: ${typeof data === 'string' ? data : JSON.stringify(data)}\n\n`),
    end: () => response.end(),
  };
}
