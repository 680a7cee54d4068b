import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { classHandler } from '@/app/commands/class/class-handler';
import { ClassHall } from '@/app/commands/class/class-hall';
import type { Interfaces } from '@/app/commands/serve/network-addresses';
import { networkSwitch } from '@/app/commands/serve/network-switch';
import { classAddress } from '@/lib/class/address';
import { IDLE_MS } from '@/lib/class/bounds';
import { newSecret, send } from './class-client';

/* Addresses of this machine (127.0.0.0/8, RFC 1122) stand for those of networks it is in. */

const network = (...addresses: string[]) => ({
  wlan: addresses.map((address) => ({ address, family: 'IPv4', internal: false }) as NonNullable<Interfaces['']>[0]),
});

let there = network('127.9.0.1');
let nowMs = 0;
let hall: ClassHall;
let close: () => Promise<void>;
let turn: ReturnType<typeof networkSwitch>;
let address: string;

beforeEach(async () => {
  vi.useFakeTimers({ toFake: ['setTimeout', 'setInterval', 'clearTimeout', 'clearInterval'] });
  there = network('127.9.0.1');
  nowMs = 0;
  hall = new ClassHall(() => nowMs);
  const handler = classHandler(hall, () => nowMs);
  const make = () =>
    createServer((request, response) => void handler.handle(request, response, new URL(`http://site${request.url}`)));
  const server = make();
  await new Promise<void>((go) => server.listen(0, '127.0.0.1', go));
  const { port } = server.address() as AddressInfo;
  address = `http://127.0.0.1:${port}`;
  turn = networkSwitch('127.0.0.1', port, make, undefined, () => there);
  handler.begin!(turn);
  close = async () => {
    server.close();
    server.closeAllConnections();
    await turn.turn(false);
  };
});
afterEach(async () => {
  vi.useRealTimers();
  await close();
});

const opens = (secret: string, headers: Record<string, string> = {}) =>
  send(address, classAddress.open, { proof: `Teacher ${secret}`, headers });
const ends = async (secret: string, code: unknown) =>
  send(address, `${classAddress.end}?code=${String(code)}`, { proof: `Teacher ${secret}` });
const hosts = () => turn.inNetwork().map((one) => new URL(one).hostname);
const aWhile = () => vi.advanceTimersByTimeAsync(5000);

describe('the network a class is held over', () => {
  it('is opened with the first class and closed with the last, whoever opened it', async () => {
    const [one, other] = [newSecret(), newSecret()];
    const { code } = (await opens(one)).body;
    expect(hosts()).toEqual(['127.9.0.1']);
    const { code: second } = (await opens(other)).body;
    await ends(one, code);
    await aWhile();
    expect(hosts()).toEqual(['127.9.0.1']);
    await ends(other, second);
    await aWhile();
    expect(hosts()).toEqual([]);
  });

  it('stays open where it was open before the class', async () => {
    await turn.turn(true);
    const secret = newSecret();
    await ends(secret, (await opens(secret)).body['code']);
    await aWhile();
    expect(hosts()).toEqual(['127.9.0.1']);
  });

  it('is closed when the class ends by itself, with nobody there to ask for it', async () => {
    await opens(newSecret());
    nowMs += IDLE_MS - 60_000;
    await vi.advanceTimersByTimeAsync(70_000);
    expect([hall.count(), hosts()]).toEqual([1, ['127.9.0.1']]);
    nowMs += 2 * 60_000;
    await vi.advanceTimersByTimeAsync(70_000);
    expect([hall.count(), hosts()]).toEqual([0, []]);
  });

  it('is opened by no one whose request was passed on from another machine', async () => {
    expect((await opens(newSecret(), { 'x-forwarded-for': '192.168.1.9' })).status).toBe(200);
    expect(hosts()).toEqual([]);
  });

  it('is the one the machine is in when its teacher looks again', async () => {
    const secret = newSecret();
    await opens(secret);
    there = network('127.9.0.2', '127.9.0.3');
    await opens(secret);
    expect(hosts()).toEqual(['127.9.0.2', '127.9.0.3']);
    await expect(fetch(address.replace('127.0.0.1', '127.9.0.1'))).rejects.toThrow();
    expect((await fetch(address.replace('127.0.0.1', '127.9.0.3'))).status).toBe(404);
  });
});
