import { deflateSync } from 'fflate';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { askedToPlay } from '@/app/parts/ready-dives';
import { deskViewSchema } from '@/app/stage/desk-view';
import { scenarios } from '@/content/scenarios/scenarios';
import { base64UrlOfBytes, bytesOfBase64Url } from '@/lib/files/links/base64url';
import { crc32 } from '@/lib/files/links/crc32';
import { decodeLesson, encodeLesson, isLessonLink } from '@/lib/files/links/lesson-link';
import { LARGEST_UNPACKED, LONGEST_FRAGMENT } from '@/lib/files/links/packed-text';
import { decodeState, encodeState } from '@/lib/files/links/share-link';
import { SOUND } from '../../unit/lesson/made-lessons';
import { damagedRecord, expectUnpolluted, promptly } from './hostile';
import { law } from '../law';
import { valueOf } from '../../unit/read';

/** What the desk and the workshop do with what follows the # of an address. */
function expectOpened(fragment: string): void {
  const asked = promptly(() => askedToPlay(fragment));
  expect(asked === undefined || typeof asked === 'string').toBe(true);
  const state = promptly(() => decodeState(fragment, deskViewSchema));
  expectUnpolluted(state);
  if (state.ok) expect(typeof state.state.script).toBe('string');
  else {
    expect(state.what).toMatch(/\S.*\.$/);
    expect(state.mend).toMatch(/\S.*\.$/);
  }
  promptly(() => isLessonLink(fragment));
  const lesson = promptly(() => decodeLesson(fragment));
  if (lesson.ok) expect(typeof lesson.value).toBe('string');
  else {
    expect(lesson.what).toMatch(/\S.*\.$/);
    expect(lesson.mend).toMatch(/\S.*\.$/);
  }
}

/** A link as anyone could make it: whatever bytes, with the checksum that belongs to them. */
function forged(mark: string, packed: Uint8Array): string {
  const whole = new Uint8Array(4 + packed.length);
  new DataView(whole.buffer).setUint32(0, crc32(packed));
  whole.set(packed, 4);
  return mark + base64UrlOfBytes(whole);
}

const VIEW = {
  pictures: ['profile', 'chase'],
  covered: ['no-stop'],
  presented: ['log'],
  cursorS: 600,
  view: { startS: 0, endS: 900 },
  unit: 1,
  overlay: { title: 'Another', script: 'stay 1 min' },
  soundScript: 'stay 1 min',
};
const STATES = scenarios.map(({ script, title }) => ({ script, title, view: VIEW }));
const LINKS = [
  ...STATES.map((state) => {
    const encoded = encodeState(state);
    if (!encoded.ok) throw new Error(encoded.what);
    return encoded.fragment;
  }),
  ...[SOUND].map((text) => {
    return valueOf(encodeLesson(text));
  }),
];
const MARKS = [
  '1.',
  'lesson-1.',
  '2.',
  '0.',
  '9999.',
  '01.',
  '1',
  '-1.',
  'lesson-',
  'lesson-2.',
  'lesson-1',
  'play=',
  '#',
  '##1.',
  '%31.',
  '',
];

describe('a link', () => {
  it('of any text is opened or refused in words', () => {
    law(
      fc.property(
        fc.constantFrom(...MARKS),
        fc.oneof(
          fc.string({ unit: 'binary' }),
          fc.base64String({ maxLength: 400 }),
          fc.json(),
          fc.constantFrom('__proto__', 'constructor', 'toString', '%', '%E0%A4%A', '\u0000', '💥'),
        ),
        (mark, text) => expectOpened(mark + text),
      ),
      600,
    );
  });

  it('cut anywhere, or with letters changed, doubled or lost, is refused or means what it meant', () => {
    law(
      fc.property(
        fc.constantFrom(...LINKS),
        fc.array(fc.tuple(fc.nat(), fc.nat(3), fc.string({ maxLength: 2 })), { minLength: 1, maxLength: 3 }),
        fc.option(fc.nat()),
        (link, changes, cut) => {
          const changed = changes.reduce((text, [at, gone, put]) => {
            const from = at % (text.length + 1);
            return text.slice(0, from) + put + text.slice(from + gone);
          }, link);
          const text = cut === null ? changed : changed.slice(0, cut % (changed.length + 1));
          expectOpened(text);
          const read = decodeState(text);
          // A checksum stands over the whole of it: what opens is what was sent.
          if (read.ok) expect(STATES.map(({ script }) => script)).toContain(read.state.script);
        },
      ),
      800,
    );
  });

  it('with any bit of it turned is refused', () => {
    law(
      fc.property(fc.constantFrom(...LINKS), fc.nat(), (link, place) => {
        const [mark] = /^(?:lesson-)?1\./.exec(link)!;
        const bytes = bytesOfBase64Url(link.slice(mark.length))!;
        const bit = place % (bytes.length * 8);
        bytes[bit >> 3]! ^= 1 << (bit & 7);
        const turned = mark + base64UrlOfBytes(bytes);
        expectOpened(turned);
        expect(decodeState(turned).ok || decodeLesson(turned).ok).toBe(false);
      }),
      600,
    );
  });

  it('with bytes of anyone’s making and the right checksum over them is opened or refused in words', () => {
    law(
      fc.property(
        fc.constantFrom('1.', 'lesson-1.'),
        fc.oneof(
          fc.uint8Array({ maxLength: 300 }),
          fc.uint8Array({ maxLength: 300 }).map((bytes) => deflateSync(bytes)),
          fc.oneof(fc.json(), fc.string({ unit: 'binary' })).map((text) => deflateSync(new TextEncoder().encode(text))),
          fc.tuple(fc.string(), fc.nat()).map(([text, at]) => {
            const bytes = deflateSync(new TextEncoder().encode(text));
            bytes[at % bytes.length]! ^= 0x55;
            return bytes;
          }),
        ),
        (mark, packed) => expectOpened(forged(mark, packed)),
      ),
      800,
    );
  });

  it('to a desk whose parts are not what they should be keeps the dive, or is refused', () => {
    const sound = STATES[0]!;
    law(
      fc.property(damagedRecord(sound), (state) => {
        const fragment = forged('1.', deflateSync(new TextEncoder().encode(JSON.stringify(state) ?? 'null')));
        if (fragment.length > LONGEST_FRAGMENT) return;
        expectOpened(fragment);
        const read = decodeState(fragment, deskViewSchema);
        const { script } = (state ?? {}) as { script?: unknown };
        if (script !== sound.script) return;
        // A title that is none makes it another kind of thing; what is to be shown may be anything.
        if ((state as { title?: unknown }).title === sound.title)
          expect(read).toMatchObject({ ok: true, state: { script } });
      }),
      600,
    );
  });

  it.each(['1.', 'lesson-1.'])('that swells into a thousand times its length is stopped: %s', (mark) => {
    for (const size of [LARGEST_UNPACKED + 1, 40_000_000]) {
      const bomb = forged(mark, deflateSync(new Uint8Array(size).fill(0x20), { level: 9 }));
      expect(bomb.length).toBeLessThan(LONGEST_FRAGMENT);
      expectOpened(bomb);
      expect(decodeState(bomb).ok || decodeLesson(bomb).ok).toBe(false);
    }
  });

  it('with thousands of brackets in brackets is refused', () => {
    for (const text of [
      `${'['.repeat(400_000)}`,
      `${'['.repeat(400_000)}${']'.repeat(400_000)}`,
      `{"script":"stay 1 min","view":${'{"a":'.repeat(150_000)}1${'}'.repeat(150_000)}}`,
      '{"__proto__":{"script":"stay 1 min"}}',
    ]) {
      expectOpened(forged('1.', deflateSync(new TextEncoder().encode(text), { level: 9 })));
    }
  });

  it('of any length is looked at once and no more', () => {
    for (const text of [
      '1.'.repeat(1_000_000),
      `1.${'A'.repeat(5_000_000)}`,
      `lesson-1.${'A'.repeat(5_000_000)}`,
      ' '.repeat(5_000_000),
      `#${'#'.repeat(1_000_000)}1.AAAA`,
      '9'.repeat(5_000_000),
      `${'1'.repeat(5_000_000)}.`,
    ])
      expectOpened(text);
  });

  it('of another version says so', () => {
    for (const version of ['0', '2', '99', '9999'])
      expect(decodeState(LINKS[0]!.replace(/^1/, version))).toMatchObject({
        ok: false,
        what: expect.stringContaining(`version ${version}`),
      });
  });
});
