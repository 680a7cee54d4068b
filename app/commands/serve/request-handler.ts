import type { IncomingMessage, ServerResponse } from 'node:http';
import type { NetworkSwitch } from './network-switch';

/**
 * Answers what the site's files do not. To add one, give it to `serveSite` in `handlers`; the first whose path fits
 * is asked, before any file. A method it does not name is answered with 405 and an Allow field, and one that throws with
 * 500, so that nothing it does ends the server.
 *
 * The headers of every answer (who may frame it, no sniffing) are set already. A body that is sent is not read for it:
 * bound it (`for await (const piece of request)`, and stop at so many bytes), and answer JSON posted from a page only
 * where `content-type` is `application/json`, which a page of another origin can't send unasked.
 *
 * A connection on which nothing is sent for `QUIET_MS` is closed. An answer that stays open, such as a stream of
 * server-sent events, writes a comment line (`:\n\n`) oftener than that, and hears of its end by
 * `response.on('close', …)`; when the server stops, all such answers are ended for it.
 */
export interface RequestHandler {
  /** `/class/` fits all that is below it; without the last slash, this address alone. */
  readonly path: string;
  readonly methods: readonly string[];
  /** Called once the server listens, with what opens it to its network. */
  readonly begin?: (network: NetworkSwitch) => void;
  readonly handle: (request: IncomingMessage, response: ServerResponse, url: URL) => void | Promise<void>;
}

export function handlerAt(handlers: readonly RequestHandler[], path: string): RequestHandler | undefined {
  return handlers.find((handler) =>
    handler.path.endsWith('/') ? path.startsWith(handler.path) : path === handler.path,
  );
}
