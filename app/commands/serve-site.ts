import { createServer, type Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import compression from '@polka/compression';
import sirv from 'sirv';

export interface RunningSite {
  /** Address with no trailing slash, such as `http://localhost:3000`. */
  address: string;
  close: () => Promise<void>;
}

/** The rest of the policy is in the pages themselves, so that it holds wherever they are put; these only a server can say. */
const HEADERS = {
  'content-security-policy': "frame-ancestors 'none'",
  'cross-origin-opener-policy': 'same-origin',
  'referrer-policy': 'no-referrer',
  vary: 'accept-encoding',
  'x-content-type-options': 'nosniff',
};

/** Files whose names hold their hash never change; all others are asked for anew each time. */
const keptFor = (path: string) =>
  path.startsWith('/_next/static/') ? 'public, max-age=31536000, immutable' : 'no-cache';

/**
 * Serves a built folder to this machine and its network (a class can open it from their own screens), text compressed.
 * Port 0 takes any free one.
 * Rejects with the system's own error (`EADDRINUSE` when the port is taken).
 */
export function serveSite(folder: string, port: number): Promise<RunningSite> {
  const notFoundPage = join(folder, '404.html');
  const compressed = compression();
  const files = sirv(folder, {
    dev: false,
    etag: true,
    extensions: ['html'],
    setHeaders: (response, path) => response.setHeader('cache-control', keptFor(path)),
  });
  const server = createServer((request, response) => {
    for (const [name, value] of Object.entries(HEADERS)) response.setHeader(name, value);
    compressed(request, response, () => {
      files(request, response, () => {
        response.statusCode = 404;
        response.setHeader('content-type', 'text/html; charset=utf-8');
        response.end(existsSync(notFoundPage) ? readFileSync(notFoundPage) : 'Not found');
      });
    });
  });
  return new Promise((resolve, reject) => {
    server.once('error', reject);
    server.listen(port, () => {
      const { port: taken } = server.address() as AddressInfo;
      resolve({ address: `http://localhost:${taken}`, close: () => closed(server) });
    });
  });
}

function closed(server: Server): Promise<void> {
  return new Promise((resolve) => {
    server.close(() => resolve());
    server.closeAllConnections();
  });
}
