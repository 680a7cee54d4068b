import { deflateSync } from 'fflate';
import fc from 'fast-check';
import { expect, it } from 'vitest';
import { base64UrlOfBytes, bytesOfBase64Url } from '@/lib/files/links/base64url';
import { crc32 } from '@/lib/files/links/crc32';
import { LARGEST_UNPACKED, LONGEST_FRAGMENT } from '@/lib/files/links/packed-text';
import { decodeStep, encodeStep } from '@/lib/files/links/step-link';
import { readLesson } from '@/lib/lesson/read-lesson';
import { lessonOfPage, type StepPage } from '@/lib/lesson/step-page';
import { KNOWN, SOUND } from '../../unit/lesson/made-lessons';
import { law } from '../law';
import { damagedRecord, expectUnpolluted, promptly } from './hostile';
import { valueOf } from '../../unit/read';

/** A question of a lesson as a page of its own carries it. */
const STEP = ((): StepPage => {
  const read = readLesson(SOUND, { known: KNOWN });
  if (!read.ok) throw new Error(read.faults[0]!.what);
  const questions = read.lesson.steps.filter(({ kind }) => kind === 'predict').slice(0, 1);
  const set = { 'line -': '-', 'prose How long?': '<p>How long?</p>' };
  const lesson = lessonOfPage(read.lesson, questions);
  return { slug: 'own-1-2', site: 'https://example.org', lesson, endS: {}, set };
})();
const MARK = 'step-1.';

/** A page as anyone could make it: whatever bytes, with the checksum that belongs to them. */
function forged(packed: Uint8Array): string {
  const whole = new Uint8Array(4 + packed.length);
  new DataView(whole.buffer).setUint32(0, crc32(packed));
  whole.set(packed, 4);
  return MARK + base64UrlOfBytes(whole);
}

function opened(fragment: string) {
  const read = promptly(() => decodeStep(fragment));
  expectUnpolluted(read);
  if (!read.ok) for (const words of [read.what, read.mend]) expect(words).toMatch(/\S.*\.$/);
  return read;
}

it('a page of a question whose parts are not what they should be is refused, or carries a question', () => {
  law(
    fc.property(damagedRecord(STEP), (page) => {
      const fragment = forged(deflateSync(new TextEncoder().encode(JSON.stringify(page) ?? 'null')));
      if (fragment.length > LONGEST_FRAGMENT) return;
      const read = opened(fragment);
      if (!read.ok) return;
      expect(read.value.lesson.steps.map(({ kind }) => kind)).toEqual(['predict']);
      expect(read.value.site ?? 'https://').toMatch(/^https?:/);
    }),
    100,
  );
});

it('a page of a question with any bit of it turned, or of anyone’s making, is refused', () => {
  const encoded = valueOf(encodeStep(STEP));
  expect(opened(encoded)).toEqual({ ok: true, value: STEP });
  law(
    fc.property(fc.nat(), fc.uint8Array({ maxLength: 300 }), (place, made) => {
      const bytes = bytesOfBase64Url(encoded.slice(MARK.length))!;
      const bit = place % (bytes.length * 8);
      bytes[bit >> 3]! ^= 1 << (bit & 7);
      expect(opened(MARK + base64UrlOfBytes(bytes)).ok).toBe(false);
      expect(opened(forged(deflateSync(made))).ok).toBe(false);
    }),
    100,
  );
  expect(opened(forged(deflateSync(new Uint8Array(LARGEST_UNPACKED + 1).fill(0x20), { level: 9 }))).ok).toBe(false);
});
