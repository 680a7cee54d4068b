import { readFileSync } from 'node:fs';
import fc from 'fast-check';

/* What a stranger, a broken disk or a bad line may hand to this program. */

/** How long any one thing may keep a person waiting on a machine that does nothing else, ms. */
export const PATIENCE_MS = 1000;
const TRIES = 4;

/**
 * How long this thread has been at work, ms. A clock would count what the machine does for others meanwhile; where the
 * system doesn't say (it is Linux that does), the clock has to do.
 */
function workedMs(): number {
  try {
    return Number(readFileSync('/proc/thread-self/schedstat', 'latin1').split(' ')[0]) / 1e6;
  } catch {
    return performance.now();
  }
}

/**
 * The work's result; throws where the work takes longer than anyone should wait. What is run for the first time is slow,
 * so that several tries are given, and the best of them counts.
 */
export function promptly<Result>(work: () => Result, patienceMs = PATIENCE_MS): Result {
  let best = Infinity;
  for (let turn = 0; turn < TRIES; turn += 1) {
    const beganMs = workedMs();
    const result = work();
    best = Math.min(best, workedMs() - beganMs);
    if (best <= patienceMs) return result;
  }
  throw tooLong(best, patienceMs);
}

/** The same of work that waits, all of it in this thread. */
export async function promptlyDone(work: () => Promise<void>, patienceMs = PATIENCE_MS): Promise<void> {
  let best = Infinity;
  for (let turn = 0; turn < TRIES; turn += 1) {
    const beganMs = workedMs();
    await work();
    best = Math.min(best, workedMs() - beganMs);
    if (best <= patienceMs) return;
  }
  throw tooLong(best, patienceMs);
}

const tooLong = (ms: number, patienceMs: number): Error =>
  new Error(`took ${Math.round(ms)} ms of work at best; ${patienceMs} ms are allowed`);

/** Throws where a prototype that everything shares has been written to, or where data has another than plain data has. */
export function expectUnpolluted(data?: unknown): void {
  for (const shared of [Object.prototype, Array.prototype, String.prototype, Function.prototype]) {
    const strange = Object.keys(shared);
    if (strange.length > 0) throw new Error(`a shared prototype was given ${strange.join(', ')}`);
  }
  expectPlain(data, 0);
}

function expectPlain(data: unknown, depth: number): void {
  if (typeof data !== 'object' || data === null || ArrayBuffer.isView(data) || depth > 40) return;
  const prototype: unknown = Object.getPrototypeOf(data);
  if (prototype !== Object.prototype && prototype !== Array.prototype && prototype !== null)
    throw new Error('data was given a prototype of its own');
  for (const value of Object.values(data)) expectPlain(value, depth + 1);
}

/** Values nobody expects in a record. */
const HOSTILE_VALUES: readonly unknown[] = [
  null,
  true,
  false,
  0,
  -1,
  1e308,
  -1e308,
  1e-320,
  4503599627370497.5,
  2 ** 53,
  '',
  ' ',
  'x',
  '__proto__',
  'constructor',
  '\u0000',
  '\ud800',
  '<img src=x onerror=alert(1)>',
  'javascript:alert(1)',
  '9'.repeat(400),
  'é'.repeat(5000),
  [],
  {},
  [[[[[[[[]]]]]]]],
  { length: 1e9 },
  { toString: 1 },
  Array.from({ length: 2000 }, () => 0),
  { ['__proto__']: { polluted: true } },
  JSON.parse('{"__proto__":{"polluted":true},"constructor":{"prototype":{"polluted":true}}}'),
];

type Place = readonly (string | number)[];

function placesIn(value: unknown, at: Place = []): Place[] {
  if (typeof value !== 'object' || value === null) return [at];
  return [
    at,
    ...Object.entries(value).flatMap(([key, one]) => placesIn(one, [...at, Array.isArray(value) ? Number(key) : key])),
  ];
}

/** A record with one to three things in it taken out, doubled, renamed or replaced by what nobody expects. */
export function damagedRecord(sound: unknown): fc.Arbitrary<unknown> {
  const places = placesIn(sound);
  const damage = fc.tuple(
    fc.constantFrom(...places),
    fc.constantFrom('out', 'replace', 'replace', 'replace', 'rename', 'add', 'swap'),
    fc.oneof(fc.constantFrom(...HOSTILE_VALUES), fc.jsonValue()),
    fc.constantFrom(...places),
  );
  return fc
    .array(damage, { minLength: 1, maxLength: 3 })
    .map((damages) =>
      damages.reduce<unknown>(
        (record, [at, how, value, other]) => damaged(record, at, how, value, other),
        structuredClone(sound),
      ),
    );
}

function valueAt(record: unknown, place: Place): unknown {
  return place.reduce<unknown>(
    (one, step) =>
      typeof one === 'object' && one !== null && Object.hasOwn(one, step)
        ? (one as Record<string, unknown>)[step]
        : undefined,
    record,
  );
}

function damaged(record: unknown, at: Place, how: string, unexpected: unknown, other: Place): unknown {
  const value = structuredClone(unexpected);
  const key = at.at(-1);
  if (key === undefined) return how === 'replace' ? value : record;
  const holder = valueAt(record, at.slice(0, -1)) as Record<string, unknown> | undefined;
  if (typeof holder !== 'object' || holder === null) return record;
  const put = (name: string | number, one: unknown) =>
    Object.defineProperty(holder, name, { value: one, enumerable: true, configurable: true, writable: true });
  if (how === 'out') delete holder[key];
  else if (how === 'rename') {
    const kept = holder[key];
    delete holder[key];
    put('__proto__', kept);
  } else if (how === 'add') put('__proto__', value);
  else if (how === 'swap') put(key, structuredClone(valueAt(record, other)));
  else put(key, value);
  return record;
}

/** Words nobody expects in a text of any kind. */
export const UNEXPECTED = ['', ' ', '0', 'NaN', '"', '\u202e', '💥', '\u0000', '__proto__'];

/** A text with lines taken out, doubled, swapped or spoilt by these words or by any `UNEXPECTED`. */
export function damagedLines(text: string, spoilt: readonly string[], most = 3): fc.Arbitrary<string> {
  const damage = fc.tuple(
    fc.nat(),
    fc.constantFrom('out', 'double', 'swap', 'value', 'value', 'put', 'cut'),
    fc.nat(),
    fc.constantFrom(...UNEXPECTED, ...spoilt),
  );
  return fc.array(damage, { minLength: 1, maxLength: most }).map((damages) => {
    const lines = text.split('\n');
    for (const [place, how, otherPlace, value] of damages) {
      const at = place % lines.length;
      const other = otherPlace % lines.length;
      const line = lines[at]!;
      if (how === 'out') lines.splice(at, 1);
      else if (how === 'double') lines.splice(at, 0, line);
      else if (how === 'swap') [lines[at], lines[other]] = [lines[other]!, line];
      // The last word of a line, or all after its colon, is where values stand.
      else if (how === 'value')
        lines[at] = /[:=] /.test(line)
          ? line.replace(/([:=] ).*$/, (_, colon: string) => colon + value)
          : line.replace(/\S+\s*$/, () => value);
      else if (how === 'put')
        lines[at] = line.slice(0, otherPlace % (line.length + 1)) + value + line.slice(otherPlace % (line.length + 1));
      else lines[at] = line.slice(0, otherPlace % (line.length + 1));
      if (lines.length === 0) lines.push('');
    }
    return lines.join('\n');
  });
}
