import { describe, expect, it } from 'vitest';
import { parse } from 'yaml';
import { cautions } from '@/content/cautions';
import { lessonFile } from '@/lib/files/links/lesson-file';

const LESSON = 'title: Two depths\nsteps: []\n';

describe('a lesson as a file', () => {
  it('begins with the caution and means what it meant', () => {
    const file = lessonFile(LESSON);
    expect(file.split('\n')[0]).toBe(`# ${cautions.general}`);
    expect(parse(file)).toEqual(parse(LESSON));
  });

  it('has the caution once, however often it is taken out and in', () => {
    expect(lessonFile(lessonFile(LESSON))).toBe(lessonFile(LESSON));
  });
});
