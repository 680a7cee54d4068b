import { spawn, type ChildProcess } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { classAddress } from '@/lib/class/address';
import { after, EMPTY_CLASS, type ClassEvent, type ClassState, type PhoneEvent } from '@/lib/class/class-state';
import { answersOf } from '@/lib/class/spread';
import { viewOf } from '@/lib/class/view';
import { Phone, Teacher, type Line } from '../unit/commands/class-client';

const PHONES = 300;
const WITHIN_MS = 5000;
/** How long phones leave and return: `SOAK_MIN=15` for the whole of it. */
const SOAK_MIN = Number(process.env['SOAK_MIN'] ?? 0.25);

/** A class of three hundred phones on a server of its own, as they are in a shop: each from an address of its own. */
export const class300 = {
  name: 'class-300',
  async run() {
    const folder = mkdtempSync(join(tmpdir(), 'halftime-bench-class-'));
    writeFileSync(join(folder, 'index.html'), 'The front page');
    const { server, site } = await started(folder);
    try {
      return await measured(site, server.pid!);
    } finally {
      server.kill('SIGTERM');
      rmSync(folder, { recursive: true });
    }
  },
};

/** The server in a process of its own, so that its memory is its alone. */
function started(folder: string): Promise<{ server: ChildProcess; site: string }> {
  const script = fileURLToPath(new URL('./class-server.ts', import.meta.url));
  const server = spawn(process.execPath, ['--import', 'tsx', script, folder], { stdio: ['ignore', 'pipe', 'inherit'] });
  return new Promise((resolve, reject) => {
    server.once('exit', () => reject(new Error('the server of the bench did not start')));
    server.stdout.once('data', (piece: Buffer) => resolve({ server, site: piece.toString().trim() }));
  });
}

function memoryMB(pid: number): number {
  const [, kB] = /VmHWM:\s+(\d+) kB/.exec(readFileSync(`/proc/${pid}/status`, 'utf8'))!;
  return Number(kB) / 1024;
}

async function measured(site: string, pid: number) {
  const teacher = new Teacher(site);
  await teacher.open();
  let state: ClassState = after(EMPTY_CLASS, {
    kind: 'asked',
    ask: { id: 'q-1', title: 'How long?', by: 'number', dimension: 'time' },
    truth: { by: 'number', value: 11, within: 2, printed: { metric: '11 min', imperial: '11 min' } },
  });
  const sentMs = new Map<string, number>();
  const waitsMs: number[] = [];
  await teacher.tell(classAddress.show, viewOf(state, 1));
  const hears = await teacher.hear('', 0, (event, data: { event?: PhoneEvent }) => {
    if (event !== 'phone' || data.event === undefined) return;
    state = after(state, data.event as ClassEvent);
    if (data.event.kind === 'answered') waitsMs.push(performance.now() - sentMs.get(data.event.phone)!);
  });

  const phones = Array.from(
    { length: PHONES },
    (_, i) => new Phone(site, teacher.code, `127.9.${Math.floor(i / 250)}.${(i % 250) + 1}`),
  );
  const lines: Line[] = [];
  for (const phone of phones) {
    await phone.join();
    lines.push(await phone.hold());
  }

  await Promise.all(
    phones.map(async (phone, i) => {
      await new Promise((go) => setTimeout(go, (i / PHONES) * WITHIN_MS));
      sentMs.set(phone.phone, performance.now());
      const told = await phone.answer({ ask: 'q-1', round: 0, nth: 1, answer: { by: 'number', value: i % 40 } });
      if (told.status !== 200) throw new Error(`an answer was refused: ${told.status} ${JSON.stringify(told.body)}`);
    }),
  );
  while (waitsMs.length < PHONES) await new Promise((go) => setTimeout(go, 20));

  const shownMs = performance.now();
  state = after(after(state, { kind: 'closed' }), { kind: 'spread shown' });
  await teacher.tell(classAddress.show, viewOf(state, 2));
  await Promise.all(
    lines.map((line) =>
      line.until((_, data: { question?: { spreads: unknown[] } }) => (data.question?.spreads.length ?? 0) > 0),
    ),
  );
  const spreadMs = performance.now() - shownMs;
  if (answersOf(state.asked[0]!, 0).length !== PHONES) throw new Error('answers were lost');

  // Phones leave the room and come back, some at every moment.
  let returns = 0;
  const until = Date.now() + SOAK_MIN * 60_000;
  while (Date.now() < until) {
    const which = [returns, returns + 1, returns + 2].map((i) => (i * 7) % PHONES);
    which.forEach((i) => lines[i]!.cut());
    await new Promise((go) => setTimeout(go, 150));
    for (const i of new Set(which)) {
      lines[i] = await phones[i]!.hold();
      if (lines[i].status !== 200 && lines[i].status !== 429)
        throw new Error(`a phone did not come back: ${lines[i].status}`);
      returns += 1;
    }
  }
  if (answersOf(state.asked[0]!, 0).length !== PHONES) throw new Error('answers were lost');
  hears.cut();
  lines.forEach((line) => line.cut());
  waitsMs.sort((one, other) => one - other);
  return {
    name: class300.name,
    p95Ms: waitsMs[Math.ceil(0.95 * waitsMs.length) - 1]!,
    worstMs: waitsMs.at(-1)!,
    allSeeMs: spreadMs,
    returns,
    serverMB: memoryMB(pid),
  };
}
