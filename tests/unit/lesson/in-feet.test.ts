import { describe, expect, it } from 'vitest';
import { lessonIn } from '@/app/lessons/in-units';
import { lessonSlugs, loadLesson, loadPrepared } from '@/app/lessons/load-lessons';
import { lessonInFeet } from '@/lib/lesson/in-feet';
import { lessonSchema, type Lesson } from '@/lib/lesson/lesson';

const lesson = (inFeet: Lesson['inFeet'], text: string, script: string) =>
  lessonInFeet(
    lessonSchema.parse({
      title: 'Up at 18 m/min',
      summary: 'The last metres.',
      level: 'first steps',
      minutes: 5,
      objectives: ['You can.'],
      inFeet,
      scripts: { main: { title: 'Thirty-three metres, and a metre more', script } },
      steps: [{ kind: 'read', id: 'one', title: 'One', text, claims: ['maxDepthM >= 33 m'] }],
    }),
  );

const SCRIPT = 'altitude: 2000 m\ndescend to 33 m at 18 m/min\nstay 16 min\nascend to 5 m at 9 m/min\n';

describe('a lesson in feet', () => {
  it('has round figures of its own in dives, values and expressions, and feet in its words', () => {
    const { title, summary, scripts, steps } = lesson({}, 'At {{33 m}} and {{10 m}}, for {{16 min}}.', SCRIPT);
    expect(scripts.main!.script).toBe(
      'altitude: 6500 ft\ndescend to 110 ft at 60 ft/min\nstay 16 min\nascend to 15 ft at 30 ft/min\n',
    );
    expect(steps[0]).toMatchObject({
      text: 'At {{110 ft}} and {{33 ft}}, for {{16 min}}.',
      claims: ['maxDepthM >= 110 ft'],
    });
    expect([title, summary, scripts.main!.title]).toEqual([
      'Up at 60 ft/min',
      'The last feet.',
      '110 ft, and a foot more',
    ]);
  });

  it('has the figures and words the lesson names, wherever they stand', () => {
    const { scripts, steps } = lesson({ '33 m': '108 ft', 'stay 16 min': 'stay 15 min' }, '{{33 m}}', SCRIPT);
    expect(scripts.main!.script).toContain('descend to 108 ft at 60 ft/min\nstay 15 min');
    expect(steps[0]).toMatchObject({ text: '{{108 ft}}', claims: ['maxDepthM >= 108 ft'] });
  });
});

/** What a reader in feet is shown of a text. */
const read = (html: string) => html.replace(/<span class="amount" data-in="metric">[^<]*<\/span>/g, '');
const METRIC = /(?<![\w.])\d+(?:[.,]\d+)?[\s\u00a0](?:m|m\/min)(?![\w/])|\bmetres?\b/i;

function textsIn(value: unknown, key = ''): string[] {
  if (['id', 'inFeet', 'metric', 'slots', 'question', 'scripts'].includes(key)) return [];
  if (typeof value === 'string') return [read(value)];
  return typeof value === 'object' && value !== null
    ? Object.entries(value).flatMap(([name, part]) => textsIn(part, name))
    : [];
}

describe.each(lessonSlugs())('the shipped lesson %s, taken in feet', (slug) => {
  const prepared = loadPrepared(slug);
  const inFeet = lessonIn(prepared, 'imperial');

  it('says no metric figure', () => {
    const said = [...textsIn(inFeet), ...Object.values(inFeet.scripts).map(({ title }) => title)];
    expect(said.length).toBeGreaterThan(50);
    // That one limit has a figure in each is what this sentence is about.
    expect(said.filter((text) => METRIC.test(text) && !text.includes('one limit in metres and in feet'))).toEqual([]);
  });

  it('dives in feet, to tens or fives where it goes deep', () => {
    for (const { script } of Object.values(inFeet.scripts)) {
      expect(script).not.toMatch(/\d m\b|\d m\/min/);
      for (const [, feet] of script.matchAll(/descend to (\d+) ft/g))
        if (Number(feet) > 35 && ![93, 99, 66, 68].includes(Number(feet))) expect(Number(feet) % 5, script).toBe(0);
    }
  });

  it('asks the same questions, with the same right answers, and is the metric lesson in metres', () => {
    expect(lessonIn(prepared, 'metric')).toBe(prepared);
    expect(inFeet.steps.map(({ id, kind }) => `${kind} ${id}`)).toEqual(
      prepared.steps.map(({ id, kind }) => `${kind} ${id}`),
    );
    expect(JSON.stringify(prepared.inFeet)).not.toContain('"right"');
    for (const [name, { script }] of Object.entries(loadLesson(slug).lesson.scripts))
      expect(prepared.scripts[name]!.script).toBe(script);
  });
});
