import { mkdirSync, mkdtempSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { request, type IncomingHttpHeaders } from 'node:http';
import { connect } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { buffer } from 'node:stream/consumers';
import { gunzipSync } from 'node:zlib';
import fc from 'fast-check';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { addressesInNetwork } from '@/app/commands/serve/network-addresses';
import { serveSite, type RunningSite } from '@/app/commands/serve/serve-site';

const PAGE = `<title>A page</title>${'dive '.repeat(1000)}`;
let folder: string;
let site: RunningSite;
let port: number;
const turned: (readonly string[])[] = [];

function layOut(words: string) {
  mkdirSync(join(folder, 'desk'), { recursive: true });
  mkdirSync(join(folder, '_next/static'), { recursive: true });
  writeFileSync(join(folder, 'index.html'), words);
  writeFileSync(join(folder, 'desk/index.html'), PAGE);
  writeFileSync(join(folder, '404.html'), 'There is no page here');
  writeFileSync(join(folder, 'ten.bin'), '0123456789');
}

beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), 'halftime-served-'));
  layOut('The front page');
  writeFileSync(join(folder, '_next/static/old.js'), 'old');
  writeFileSync(join(folder, '.hidden'), 'hidden');
  symlinkSync('/etc/hostname', join(folder, 'outside.txt'));
  site = await serveSite(folder, 0, {
    onNetwork: (inNetwork) => turned.push(inNetwork),
    handlers: [
      {
        path: '/class/',
        methods: ['POST'],
        handle(_request, response, { pathname }) {
          if (pathname === '/class/throws') throw new Error('on purpose');
          response.end('heard');
        },
      },
    ],
  });
  port = Number(new URL(site.address).port);
});
afterAll(async () => {
  await site.close();
  rmSync(folder, { recursive: true });
});

type Answer = { status: number; headers: IncomingHttpHeaders; body: Buffer };

function ask(
  path: string,
  { method = 'GET', headers = {}, body }: { method?: string; headers?: Record<string, string>; body?: string } = {},
) {
  return new Promise<Answer>((resolve, reject) => {
    const asked = request({ host: '127.0.0.1', port, path, method, headers, agent: false }, (response) => {
      buffer(response).then(
        (body) => resolve({ status: response.statusCode!, headers: response.headers, body }),
        reject,
      );
    });
    asked.on('error', reject);
    asked.end(body);
  });
}

/** Sends bytes as they are and returns what comes back until the server ends it, or nothing came for a while. */
function sendRaw(bytes: string | Buffer, waitMs = 300) {
  return new Promise<string>((resolve) => {
    let heard = '';
    const socket = connect(port, '127.0.0.1', () => socket.write(bytes));
    socket.setTimeout(waitMs, () => socket.destroy());
    socket.on('data', (piece) => (heard += piece.toString('latin1')));
    socket.on('error', () => undefined);
    socket.on('close', () => resolve(heard));
  });
}

const range = (field: string, more: Record<string, string> = {}) =>
  ask('/ten.bin', { headers: { range: field, ...more } });

describe('a part of a file (RFC 9110, section 14)', () => {
  it.each([
    ['bytes=2-5', 206, '2345', 'bytes 2-5/10'],
    ['bytes=7-', 206, '789', 'bytes 7-9/10'],
    ['bytes=-5', 206, '56789', 'bytes 5-9/10'],
    ['bytes=-500', 206, '0123456789', 'bytes 0-9/10'],
    ['bytes=8-500', 206, '89', 'bytes 8-9/10'],
    ['bytes=0-0', 206, '0', 'bytes 0-0/10'],
  ])('%s is answered with %i and just that', async (field, status, body, told) => {
    const answer = await range(field);
    expect([answer.status, answer.body.toString(), answer.headers['content-range']]).toEqual([status, body, told]);
    expect(answer.headers['content-length']).toBe(String(body.length));
  });

  it.each(['bytes=5-2', 'bytes=0-1,3-4', 'lines=1-2', 'bytes=', 'bytes=-', 'bytes=a-b', '5-2', 'bytes=--5'])(
    '%s is no range, so all of it is the answer',
    async (field) => {
      const answer = await range(field);
      expect([answer.status, answer.body.toString()]).toEqual([200, '0123456789']);
    },
  );

  it.each(['bytes=10-', 'bytes=99-100', 'bytes=-0'])('%s is said to be beyond the file', async (field) => {
    const answer = await range(field);
    expect([answer.status, answer.headers['content-range']]).toEqual([416, 'bytes */10']);
  });

  it('is given only of the same file, where that is asked for, and never to HEAD', async () => {
    const tag = (await ask('/ten.bin')).headers.etag!;
    expect((await range('bytes=2-5', { 'if-range': tag })).status).toBe(206);
    expect((await range('bytes=2-5', { 'if-range': '"another"' })).status).toBe(200);
    expect((await ask('/ten.bin', { method: 'HEAD', headers: { range: 'bytes=2-5' } })).status).toBe(200);
  });

  it('is cut from the file and not from what is sent compressed', async () => {
    const answer = await ask('/desk/', { headers: { range: 'bytes=7-12', 'accept-encoding': 'gzip' } });
    expect(answer.body.toString()).toBe(PAGE.slice(7, 13));
  });
});

describe('what is asked for', () => {
  it('is answered compressed to whoever takes that, and not sent again when it has not changed', async () => {
    const packed = await ask('/desk', { headers: { 'accept-encoding': 'br;q=0.5, gzip' } });
    expect(packed.headers['content-encoding']).toBe('gzip');
    expect(gunzipSync(packed.body).toString()).toBe(PAGE);
    const plain = await ask('/desk', { headers: { 'accept-encoding': 'gzip;q=0' } });
    expect(plain.body.toString()).toBe(PAGE);
    expect(plain.headers.etag).not.toBe(packed.headers.etag);
    for (const tag of [plain.headers.etag!, packed.headers.etag!])
      expect((await ask('/desk', { headers: { 'if-none-match': `"x", W/${tag}` } })).status).toBe(304);
    expect((await ask('/desk', { headers: { 'if-none-match': '"x"' } })).status).toBe(200);
  });

  it('is told to HEAD as to GET, without the body', async () => {
    const [get, head] = [await ask('/desk/'), await ask('/desk/', { method: 'HEAD' })];
    expect(head.body.length).toBe(0);
    expect({ ...head.headers, date: '' }).toEqual({ ...get.headers, date: '' });
  });

  it.each(['POST', 'PUT', 'DELETE', 'TRACE', 'OPTIONS', 'PATCH', 'PROPFIND', 'LOCK'])(
    'may be asked for by GET and HEAD alone, not by %s',
    async (method) => {
      const answer = await ask('/', { method });
      expect([answer.status, answer.headers.allow]).toEqual([405, 'GET, HEAD']);
    },
  );

  it.each([
    '/../package.json',
    '/..%2f..%2fetc/passwd',
    '/%2e%2e/%2e%2e/etc/passwd',
    '/desk/..%5c..%5cpackage.json',
    '//etc/passwd',
    '/.hidden',
    '/outside.txt',
    '/etc/passwd',
    '/desk/%252e%252e/index.html',
    '/__proto__',
    '/constructor',
  ])('is nothing outside the site: %s', async (path) => {
    const answer = await ask(path);
    expect([answer.status, answer.body.toString()]).toEqual([404, 'There is no page here']);
  });

  it.each(['/%', '/%zz', '/%ff%fe', '/a%00b'])('has to be an address: %s', async (path) => {
    expect((await ask(path)).status).toBe(400);
  });

  it('may be an address in full, as a proxy asks', async () => {
    expect(
      await sendRaw(`GET http://elsewhere.invalid/ten.bin HTTP/1.1\r\nHost: x\r\nConnection: close\r\n\r\n`),
    ).toMatch(/^HTTP\/1.1 200 .*0123456789$/s);
  });
});

describe('the list of handlers', () => {
  it('is asked before any file, by path and method, and what one throws does no harm', async () => {
    expect((await ask('/class/vote', { method: 'POST' })).body.toString()).toBe('heard');
    const wrong = await ask('/class/vote');
    expect([wrong.status, wrong.headers.allow]).toEqual([405, 'POST']);
    expect((await ask('/class/throws', { method: 'POST' })).status).toBe(500);
    expect((await ask('/')).status).toBe(200);
  });

  it('tells the front page that it is open to this machine alone, and that it may be opened from here', async () => {
    expect(JSON.parse((await ask('/here.json')).body.toString())).toEqual({ inNetwork: [], maySwitch: true });
  });
});

describe('the switch that opens the server to its network', () => {
  const json = { 'content-type': 'application/json' };
  const turn = (open: boolean, headers: Record<string, string> = {}, body = JSON.stringify({ open })) =>
    ask('/here.json', { method: 'POST', headers: { ...json, ...headers }, body });
  const told = (answer: Answer) => JSON.parse(answer.body.toString()) as { inNetwork: string[]; maySwitch: boolean };

  it('opens an address of each network this machine is in, where nobody else may close it, and closes all', async () => {
    const { inNetwork } = told(await turn(true));
    expect(turned.at(-1)).toEqual(inNetwork);
    expect(inNetwork).toEqual(addressesInNetwork('0.0.0.0', port));
    for (const address of inNetwork) {
      expect(await (await fetch(`${address}/ten.bin`)).text()).toBe('0123456789');
      expect(await (await fetch(`${address}/here.json`)).json()).toEqual({ inNetwork, maySwitch: false });
      const closing = await fetch(`${address}/here.json`, { method: 'POST', headers: json, body: '{"open":false}' });
      expect(closing.status).toBe(403);
    }
    expect(told(await turn(false)).inNetwork).toEqual([]);
    for (const address of inNetwork) await expect(fetch(address)).rejects.toThrow();
    expect((await ask('/')).status).toBe(200);
  });

  it.each<[string, Record<string, string>, string?]>([
    ['a page of another origin, whose kind of body needs no leave', { 'content-type': 'text/plain' }],
    ['a page whose own name leads here', { host: 'elsewhere.invalid:3000' }],
    ['someone whose request was passed on', { 'x-forwarded-for': '192.168.1.9' }],
    ['a body that is not understood', {}, '{"open":"yes"}'],
    ['a body that is no JSON', {}, 'open'],
    ['a body without end', {}, ' '.repeat(100_000)],
  ])('is not turned by %s', async (_, headers, body) => {
    expect((await turn(true, headers, body)).status).toBe(403);
    expect(told(await ask('/here.json')).inNetwork).toEqual([]);
  });
});

describe('the server', () => {
  const odd = fc.oneof(
    fc.string({ maxLength: 200 }),
    fc.string({ unit: 'binary', maxLength: 200 }),
    fc
      .tuple(
        fc.constantFrom('GET', 'HEAD', 'POST', 'TRACE', 'CONNECT', 'QUERY', 'get', 'G\u0000T', ''),
        fc.oneof(fc.webPath(), fc.string({ maxLength: 60 }), fc.constantFrom('*', '/%', '/ten.bin', '/desk', 'x:y')),
        fc.constantFrom('HTTP/1.1', 'HTTP/1.0', 'HTTP/9.9', 'HTTP', ''),
        fc.array(
          fc.tuple(
            fc.constantFrom(
              'Range',
              'If-Range',
              'If-None-Match',
              'Accept-Encoding',
              'Content-Length',
              'Transfer-Encoding',
              'Expect',
              'Upgrade',
              'Connection',
              'Host',
            ),
            fc.oneof(
              fc.string({ maxLength: 40 }),
              fc.constantFrom('bytes=5-2', 'bytes=-0', '*', 'chunked', '-1', '100-continue', 'websocket', 'upgrade'),
            ),
          ),
          { maxLength: 6 },
        ),
      )
      .map(([method, path, version, headers]) =>
        [`${method} ${path} ${version}`, ...headers.map((header) => header.join(': ')), '', ''].join('\r\n'),
      ),
  );

  it('outlives whatever is sent to it', async () => {
    await fc.assert(
      fc.asyncProperty(fc.array(odd, { minLength: 8, maxLength: 8 }), async (requests) => {
        await Promise.all(requests.map((bytes) => sendRaw(bytes, 40)));
        expect((await ask('/ten.bin')).body.toString()).toBe('0123456789');
      }),
      { numRuns: 60 },
    );
  }, 60_000);

  it('refuses a head that is too long, and outlives one who leaves in the middle', async () => {
    expect(await sendRaw(`GET / HTTP/1.1\r\nHost: x\r\nX: ${'y'.repeat(100_000)}\r\n\r\n`)).toMatch(/^HTTP\/1.1 431 /);
    await new Promise<void>((resolve) => {
      const socket = connect(port, '127.0.0.1', () => {
        socket.write('GET /desk/ HTTP/1.1\r\nHost: x\r\n\r\n');
        socket.resetAndDestroy();
        resolve();
      });
    });
    expect((await ask('/')).status).toBe(200);
  });

  it('goes on serving while its files vanish, and goes over to the newer site whole', async () => {
    rmSync(folder, { recursive: true });
    expect((await ask('/')).body.toString()).toBe('The front page');
    layOut('A newer front page');
    expect((await ask('/')).body.toString()).toBe('The front page');
    writeFileSync(join(folder, '.built-from'), '1');
    await expect.poll(async () => (await ask('/')).body.toString(), { timeout: 8000 }).toBe('A newer front page');
    expect((await ask('/_next/static/old.js')).body.toString(), 'what open pages still ask for').toBe('old');
    expect((await ask('/.built-from')).status).toBe(404);
  }, 20_000);
});
