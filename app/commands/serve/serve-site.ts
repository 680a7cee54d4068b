import { createServer, STATUS_CODES, type IncomingMessage, type Server, type ServerResponse } from 'node:http';
import type { AddressInfo } from 'node:net';
import { statSync, unwatchFile, watchFile } from 'node:fs';
import { join } from 'node:path';
import { embedPath } from '../../parts/routes';
import { cameFrom, isLoopback } from './network-addresses';
import { hereHandler, networkSwitch, type NetworkSwitch } from './network-switch';
import { handlerAt, type RequestHandler } from './request-handler';
import { sendFile } from './send-file';
import { fileAt, readSite, withOlderChunks } from '../site/site-files';
import { STAMP } from '../site/stamp';

export interface RunningSite {
  /** Address on this machine with no trailing slash, such as `http://localhost:3000`. */
  readonly address: string;
  /** Addresses for others in the network, likeliest first, when it was started. */
  readonly inNetwork: readonly string[];
  readonly close: () => Promise<void>;
}

export interface ServeOptions {
  /** The interface to listen on; this machine alone where none is given. */
  readonly host?: string | undefined;
  readonly handlers?: readonly RequestHandler[];
  /** Told the addresses whenever the page has opened the site to the network; none where it has closed it. */
  readonly onNetwork?: ((inNetwork: readonly string[]) => void) | undefined;
}

/** The rest of the policy is in the pages themselves, so that it holds wherever they are put; these only a server can say. */
const HEADERS = {
  'content-security-policy': "frame-ancestors 'none'",
  'referrer-policy': 'no-referrer',
  vary: 'accept-encoding',
  'x-content-type-options': 'nosniff',
};

/** Browsers heed this from safe addresses alone, and complain of it from others: a proxy that makes ours safe is on this machine. */
const SAFE_HEADERS = { 'cross-origin-opener-policy': 'same-origin' };

/** Enough for a class of three hundred phones, each with a line that stays open and another to answer on, and some screens beside. */
const MOST_CONNECTIONS = 900;
/** A request has to be told within so long, its head within half of that. */
const REQUEST_MS = 20_000;
/** A connection on which nothing moves for so long is closed. */
const QUIET_MS = 60_000;
/** How often it is looked whether the site has been built anew. */
const LOOK_MS = 1000;

/**
 * Serves a built folder from memory, text compressed. A site that is built anew meanwhile takes its place whole, once its
 * stamp is written. Port 0 takes any free one.
 * Rejects with the system's own error (`EADDRINUSE` when the port is taken).
 */
export function serveSite(
  folder: string,
  port: number,
  { host = '127.0.0.1', handlers = [], onNetwork }: ServeOptions = {},
): Promise<RunningSite> {
  let files = readSite(folder);
  let network: NetworkSwitch;
  const all = [...handlers, hereHandler(() => network)];
  const answer = async (request: IncomingMessage, response: ServerResponse) => {
    const method = request.method ?? '';
    const url = urlOf(request);
    const path = url && decoded(url.pathname);
    if (!url || path === undefined) return refuse(response, 400);
    const handler = handlerAt(all, path);
    const allowed = handler?.methods ?? ['GET', 'HEAD'];
    if (!allowed.includes(method)) {
      response.setHeader('allow', allowed.join(', '));
      // What it sends with the request is not waited for.
      response.setHeader('connection', 'close');
      return refuse(response, 405);
    }
    if (handler) return handler.handle(request, response, url);
    const file = fileAt(files, path);
    if (file) return sendFile(request, response, file);
    const notFound = files.get('/404.html');
    return notFound ? sendFile(request, response, notFound, 404) : refuse(response, 404);
  };
  const listener = (request: IncomingMessage, response: ServerResponse) => {
    const headers = isLoopback(cameFrom(request)) ? { ...HEADERS, ...SAFE_HEADERS } : HEADERS;
    for (const [name, value] of Object.entries(headers)) response.setHeader(name, value);
    // This one page is made to stand in others; every other refuses.
    if (urlOf(request)?.pathname === embedPath) response.removeHeader('content-security-policy');
    // Whoever asked may be gone before the answer is: that is theirs to do.
    request.on('error', () => undefined);
    response.on('error', () => undefined);
    answer(request, response).catch((error: unknown) => {
      console.error(`${request.method} ${request.url?.slice(0, 200)}: ${String(error)}`);
      if (response.headersSent) response.destroy();
      else refuse(response, 500);
    });
  };
  const make = () => {
    const made = createServer(
      { requestTimeout: REQUEST_MS, headersTimeout: REQUEST_MS / 2, connectionsCheckingInterval: 5000 },
      listener,
    );
    made.maxConnections = MOST_CONNECTIONS;
    made.timeout = QUIET_MS;
    return made;
  };
  const server = make();
  const stamp = join(folder, STAMP);
  const look = () => {
    try {
      if (statSync(stamp).isFile()) files = withOlderChunks(readSite(folder), files);
    } catch {
      // A build is under way: the site as it was is served until the next stamp.
    }
  };
  return new Promise((resolve, reject) => {
    server.once('error', reject);
    server.listen(port, host, () => {
      server.off('error', reject);
      server.on('error', (error) => console.error(`The server: ${error.message}`));
      watchFile(stamp, { interval: LOOK_MS, persistent: false }, look);
      const { port: taken } = server.address() as AddressInfo;
      const local = isLoopback(host) || host === '0.0.0.0' || host === '::' ? 'localhost' : undefined;
      network = networkSwitch(host, taken, make, onNetwork);
      for (const handler of handlers) handler.begin?.(network);
      const inNetwork = network.inNetwork();
      resolve({
        address: local ? `http://${local}:${taken}` : inNetwork[0]!,
        inNetwork,
        async close() {
          unwatchFile(stamp, look);
          await Promise.all([network.turn(false), closed(server)]);
        },
      });
    });
  });
}

/** What is asked for, as an address on this site; the host it was asked of does not matter. */
function urlOf({ url = '' }: IncomingMessage): URL | undefined {
  const from = url.startsWith('/') ? `http://site${url.replace(/^\/+/, '/')}` : url;
  return URL.canParse(from) ? new URL(from) : undefined;
}

function decoded(path: string): string | undefined {
  try {
    const plain = decodeURIComponent(path);
    return plain.includes('\0') ? undefined : plain;
  } catch {
    return undefined;
  }
}

function refuse(response: ServerResponse, statusCode: number): void {
  const body = `${STATUS_CODES[statusCode]}\n`;
  response.writeHead(statusCode, {
    'content-type': 'text/plain; charset=utf-8',
    'content-length': Buffer.byteLength(body),
  });
  response.end(body);
}

function closed(server: Server): Promise<void> {
  return new Promise((resolve) => {
    server.close(() => resolve());
    server.closeAllConnections();
  });
}
