import { createServer, type Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import sirv from 'sirv';

export interface RunningSite {
  /** Address with no trailing slash, such as `http://localhost:3000`. */
  address: string;
  close: () => Promise<void>;
}

/**
 * Serves a built folder to this machine and its network (a class can open it from their own screens).
 * Port 0 takes any free one.
 * Rejects with the system's own error (`EADDRINUSE` when the port is taken).
 */
export function serveSite(folder: string, port: number): Promise<RunningSite> {
  const notFoundPage = join(folder, '404.html');
  const files = sirv(folder, { dev: false, etag: true, extensions: ['html'] });
  const server = createServer((request, response) => {
    files(request, response, () => {
      response.statusCode = 404;
      response.setHeader('content-type', 'text/html; charset=utf-8');
      response.end(existsSync(notFoundPage) ? readFileSync(notFoundPage) : 'Not found');
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
