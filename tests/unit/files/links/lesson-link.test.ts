import { describe, expect, it } from 'vitest';
import { decodeLesson, encodeLesson, isLessonLink, nearLessonOf } from '@/lib/files/links/lesson-link';
import { packText } from '@/lib/files/links/packed-text';
import { LONGEST_LESSON } from '@/lib/lesson/lesson';
import { SOUND } from '../../lesson/made-lessons';
import { valueOf } from '../../read';

describe('a lesson in a link', () => {
  it('comes out as it went in', () => {
    const text = `${SOUND}# Straße, 深度, 🤿\n`;
    const packed = valueOf(encodeLesson(text));
    expect(packed).toMatch(/^lesson-1\.[A-Za-z0-9_-]+$/);
    expect(decodeLesson(`#${packed}`)).toEqual({ ok: true, value: text });
    expect(isLessonLink(`#${packed}`)).toBe(true);
    expect(isLessonLink('#1.abc')).toBe(false);
  });

  it('made from a lesson of the site leans on its text, and is refused without it or with another', () => {
    const near = { slug: '04-some-lesson', text: SOUND };
    const text = `${SOUND}# and a little more\n`;
    const packed = encodeLesson(text, near);
    const whole = encodeLesson(text);
    if (!packed.ok || !whole.ok) throw new Error('It fits a link.');
    expect(packed.value.length).toBeLessThan(whole.value.length / 3);
    expect(isLessonLink(`#${packed.value}`)).toBe(true);
    expect(nearLessonOf(`#${packed.value}`)).toBe('04-some-lesson');
    expect(nearLessonOf(`#${whole.value}`)).toBeUndefined();
    expect(decodeLesson(`#${packed.value}`, SOUND)).toEqual({ ok: true, value: text });
    expect(decodeLesson(packed.value)).toMatchObject({ what: expect.stringContaining('could not be fetched') });
    expect(decodeLesson(packed.value, SOUND.replace('a', 'b'))).toMatchObject({
      ok: false,
      what: expect.stringContaining('another version'),
      mend: 'Ask for the lesson as a file.',
    });
  });

  it('is refused where it is too long', () => {
    let seed = 1;
    const noise = Array.from({ length: LONGEST_LESSON }, () =>
      String.fromCharCode(33 + ((seed = (seed * 48271) % 2147483647) % 90)),
    ).join('');
    expect(encodeLesson(noise)).toMatchObject({ ok: false, what: 'This lesson is too long for a link.' });
    expect(decodeLesson(`lesson-1.${packText('x'.repeat(LONGEST_LESSON + 1))}`)).toMatchObject({
      ok: false,
      what: expect.stringContaining('120001 characters'),
    });
  });

  it('says what is wrong with a link that is cut, changed or of another kind', () => {
    const packed = encodeLesson(SOUND);
    if (!packed.ok) throw new Error(packed.what);
    const { value } = packed;
    expect(decodeLesson(value.slice(0, -20))).toMatchObject({ ok: false });
    const swapped = value[40] === 'A' ? 'B' : 'A';
    expect(decodeLesson(value.slice(0, 40) + swapped + value.slice(41))).toMatchObject({
      ok: false,
      what: expect.stringContaining('changed or cut'),
    });
    expect(decodeLesson('lesson-9.abc')).toMatchObject({ ok: false, what: 'This link was made by a newer version.' });
    expect(decodeLesson('')).toMatchObject({ ok: false, what: 'This is not a link to a lesson.' });
    expect(decodeLesson('lesson-1.%%%')).toMatchObject({ ok: false });
  });
});
