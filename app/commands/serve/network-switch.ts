import type { IncomingMessage, Server, ServerResponse } from 'node:http';
import { networkInterfaces } from 'node:os';
import { hereFile, MOST_ASKED_BYTES } from '../../parts/here-file';
import { addressesInNetwork, cameFrom, isLoopback, type Interfaces } from './network-addresses';
import type { RequestHandler } from './request-handler';

/** Opens a server that listens to this machine alone to its network, and closes it again, while it runs. */
export interface NetworkSwitch {
  /** Addresses at which others reach it now, likeliest first. */
  readonly inNetwork: () => readonly string[];
  /** Whether the page may turn it: not where the whole server was opened to an interface when it was started. */
  readonly turns: boolean;
  /** Asked to open while it is open, it goes on with the networks the machine is in by then. */
  readonly turn: (open: boolean) => Promise<void>;
}

/**
 * @param host the interface the server itself listens on
 * @param make another server that answers the same
 * @param onTurn told the addresses each time it was turned; none once it is closed
 * @param interfaces the networks the machine is in now
 */
export function networkSwitch(
  host: string,
  port: number,
  make: () => Server,
  onTurn: (inNetwork: readonly string[]) => void = () => undefined,
  interfaces: () => Interfaces = networkInterfaces,
): NetworkSwitch {
  const turns = isLoopback(host);
  let opened: { readonly address: string; readonly server: Server }[] = [];
  let turning = Promise.resolve();
  async function turnNow(open: boolean): Promise<void> {
    const wanted = open ? addressesInNetwork('0.0.0.0', port, interfaces()) : [];
    const kept = opened.filter(({ address }) => wanted.includes(address));
    const closing = opened.filter((one) => !kept.includes(one));
    // An address each: one for all would clash with the server that listens to this machine.
    const tried = wanted.map(async (address) => {
      const known = kept.find((one) => one.address === address);
      const server = known?.server ?? (await listening(make(), new URL(address).hostname, port));
      return server ? [{ address, server }] : [];
    });
    opened = (await Promise.all(tried)).flat();
    for (const { server } of closing) server.close();
    for (const { server } of closing) server.closeAllConnections();
    if (closing.length > 0 || opened.length > kept.length || (open && opened.length === 0))
      onTurn(opened.map(({ address }) => address));
  }
  return {
    inNetwork: () => (turns ? opened.map(({ address }) => address) : addressesInNetwork(host, port, interfaces())),
    turns,
    turn: (open) => (turning = turning.then(() => turnNow(open))),
  };
}

function listening(server: Server, host: string, port: number): Promise<Server | undefined> {
  return new Promise((resolve) => {
    server.once('error', () => resolve(undefined));
    server.listen(port, host, () => {
      server.on('error', (error) => console.error(`The server: ${error.message}`));
      resolve(server);
    });
  });
}

/** Tells the front page where else the site can be opened and, asked by this machine alone, opens it to the network. */
export function hereHandler(network: () => NetworkSwitch): RequestHandler {
  return {
    path: `/${hereFile}`,
    methods: ['GET', 'HEAD', 'POST'],
    async handle(request, response) {
      const { turns, turn } = network();
      const maySwitch = turns && isOfThisMachine(request);
      if (request.method === 'POST') {
        const open = maySwitch && isJson(request) ? await askedToOpen(request) : undefined;
        if (open === undefined) return answerJson(request, response, 403, {});
        await turn(open);
      }
      answerJson(request, response, 200, { inNetwork: network().inNetwork(), maySwitch });
    },
  };
}

/**
 * Whether the asker sits at this machine: by where the request comes from, by the name it was asked of (a page from
 * elsewhere can make its own name lead here), and by no one having passed it on.
 */
export function isOfThisMachine(request: IncomingMessage): boolean {
  const { headers } = request;
  const asked = `http://${headers.host ?? ''}`;
  const name = URL.canParse(asked) ? new URL(asked).hostname.replace(/^\[|\]$/g, '') : '';
  const passedOn = ['forwarded', 'x-forwarded-for', 'via'].some((field) => headers[field] !== undefined);
  return isLoopback(cameFrom(request)) && isLoopback(name) && !passedOn;
}

/** A page of another origin can't send this kind unasked. */
function isJson({ headers }: IncomingMessage): boolean {
  return /^application\/json\s*(;|$)/i.test(headers['content-type'] ?? '');
}

async function askedToOpen(request: IncomingMessage): Promise<boolean | undefined> {
  let text = '';
  for await (const piece of request) {
    text += String(piece);
    if (text.length > MOST_ASKED_BYTES) return undefined;
  }
  try {
    const { open } = JSON.parse(text) as { open?: unknown };
    return typeof open === 'boolean' ? open : undefined;
  } catch {
    return undefined;
  }
}

function answerJson({ method }: IncomingMessage, response: ServerResponse, statusCode: number, told: object): void {
  const body = JSON.stringify(told);
  response.writeHead(statusCode, {
    'content-type': 'application/json; charset=utf-8',
    'cache-control': 'no-store',
    'content-length': Buffer.byteLength(body),
  });
  response.end(method === 'HEAD' ? undefined : body);
}
