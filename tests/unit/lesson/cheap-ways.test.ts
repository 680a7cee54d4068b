// @module-tag in-turn
import { describe, expect, it } from 'vitest';
import { loadLessons } from '@/app/lessons/load-lessons';
import { parseScript } from '@/lib/dive/script';
import { lessonWorld } from '@/lib/lesson/expression/lesson-world';
import { goalStateOf } from '@/lib/lesson/questions/goal';
import { subjectOf } from '@/lib/lesson/questions/subject';
import type { StepOf } from '@/lib/lesson/step';

const goals = loadLessons().flatMap(({ slug, lesson }) => {
  const worlds = lessonWorld(lesson);
  return lesson.steps
    .filter((step): step is StepOf<'try'> => step.kind === 'try')
    .map((step) => {
      const begun = lesson.scripts[step.script ?? Object.keys(lesson.scripts)[0]!]!.script;
      const meets = (script: string) => {
        const parsed = parseScript(script);
        if (!parsed.ok) return false;
        const world = worlds.aboutDive(subjectOf(parsed.dive, worlds.rulesOf(step.script)));
        return goalStateOf(step, worlds.about(step.script).subject.dive, world, 'metric').met;
      };
      return { name: `${slug}#${step.id}`, step, begun, meets };
    });
});

/** A script with a setting of it put to another value, or added at its head. */
function withSetting(script: string, name: string, value: string): string {
  const line = new RegExp(`^${name}:.*$`, 'm');
  return line.test(script) ? script.replace(line, `${name}: ${value}`) : `${name}: ${value}\n${script}`;
}

const SETTINGS: readonly (readonly [string, readonly string[]])[] = [
  ['gradient factors', ['100/100', '95/95', '85/85', '30/85', '20/20']],
  ['altitude', ['3000 m', '500 m']],
  ['water', ['fresh', 'sea']],
  ['model', ['ZH-L16A', 'ZH-L16B']],
  ['respiratory quotient', ['0.8']],
  ['gas', ['oxygen', '50%', '32%', '28%', '18/45', '10/70']],
  ['plan ascent', ['3 m/min', '20 m/min']],
  ['last stop', ['6 m']],
  ['consumption', ['5 L/min']],
];

describe.each(goals)('the goal $name', ({ step, begun, meets }) => {
  it('is not met by the dive it begins with, whatever setting is put to another value', () => {
    const cheap = SETTINGS.flatMap(([name, values]) => values.map((value) => withSetting(begun, name, value)));
    expect([begun, ...cheap].filter(meets)).toEqual([]);
  });

  it('is not met by its own way once limits are loosened or a setting is turned, unless it frees that', () => {
    expect(meets(step.reach)).toBe(true);
    const turned = SETTINGS.filter(([name]) => !(step.free as readonly string[]).includes(name)).flatMap(
      ([name, values]) =>
        values
          .map((value) => withSetting(step.reach, name, value))
          .filter((script) => {
            const [one, other] = [parseScript(script), parseScript(step.reach)];
            return one.ok && other.ok && JSON.stringify(one.dive.settings) !== JSON.stringify(other.dive.settings);
          }),
    );
    expect(turned.filter(meets)).toEqual([]);
  });

  it('is not met by a second, easier dive after the first', () => {
    if (step.free.includes('dives')) return;
    expect(meets(`${begun.trimEnd()}\ninterval 12 h\n${step.reach.replace(/^[a-z ]+:.*\n/gm, '')}`)).toBe(false);
  });
});

describe('the dive whose worst ascent fits', () => {
  const { begun, meets } = goals.find(({ name }) => name.endsWith('#survive-the-loss'))!;

  it('is not made by changing one number', () => {
    const numbers = [...begun.matchAll(/(?<=stay |to )\d+(?= )/g)];
    const changed = numbers.flatMap(({ 0: number, index }) =>
      [0.25, 0.3, 0.35, 0.4, 0.5, 0.75, 1.5, 2].map((times) => {
        const value = Math.max(1, Math.round(Number(number) * times));
        return begun.slice(0, index) + value + begun.slice(index + number.length);
      }),
    );
    expect(changed.length).toBeGreaterThan(40);
    expect(changed.filter(meets)).toEqual([]);
  });
});
