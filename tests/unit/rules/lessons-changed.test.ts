import { beforeAll, describe, expect, it } from 'vitest';
import { loadLessons } from '@/app/lessons/load-lessons';
import type { Dive } from '@/lib/dive/dive';
import { parseScript } from '@/lib/dive/script';
import { SET_RIGHT } from '@/lib/dive/edit/set-right';
import { RULES } from '@/lib/rules/all';
import { ruleSettingsSchema } from '@/lib/rules/settings/rule-settings';
import { watchDive } from '@/lib/rules/watch';

/* A rule that is on unless switched off enters every lesson: it has to say which of them it changes. */

/** Seconds between two samples: every stop and alarm of a lesson lasts longer. */
const EVERY_S = 10;

interface LessonDive {
  readonly number: number;
  readonly dive: Dive;
  readonly rules: Readonly<Record<string, unknown>>;
}

const dives: LessonDive[] = [];
const onUnlessSwitchedOff = RULES.filter(({ settings }) => settings.on.usual);

beforeAll(() => {
  for (const { lesson } of loadLessons()) {
    for (const { script, rules = {} } of Object.values(lesson.scripts)) {
      const parsed = parseScript(script);
      if (parsed.ok) dives.push({ number: lesson.number!, dive: parsed.dive, rules });
    }
  }
}, 300_000);

/** All a unit that is set right shows on a dive of a lesson: what it tells, and every reading at every sample. */
function shown({ dive, rules }: LessonDive, off?: string): string {
  const own = (off === undefined ? undefined : rules[off]) as object | undefined;
  const settings = ruleSettingsSchema.parse(off === undefined ? rules : { ...rules, [off]: { ...own, on: false } });
  const { events, tracks } = watchDive(dive, SET_RIGHT, settings, EVERY_S, { intervalEveryS: 600 });
  return JSON.stringify([events, Object.entries(tracks)]);
}

describe('a rule that is on unless switched off', () => {
  it.each(onUnlessSwitchedOff.map((rule) => [rule.title, rule] as const))(
    '“%s” states the shipped lessons in which a unit shows other things for it',
    (_, { id, ...rule }) => {
      const changed = new Set<number>();
      const lessons = new Set(dives.map(({ number }) => number));
      for (const lessonDive of dives)
        if (!changed.has(lessonDive.number) && shown(lessonDive) !== shown(lessonDive, id))
          changed.add(lessonDive.number);
      const stated = 'changesLessons' in rule ? rule.changesLessons : undefined;
      expect(stated, `read these lessons again, and write changesLessons into the file of ${id}`).toEqual(
        changed.size === lessons.size ? 'all' : [...changed],
      );
    },
    300_000,
  );

  it('is told from one that is off, which states none', () => {
    const off = RULES.filter(({ settings }) => !settings.on.usual);
    expect(off.length).toBeGreaterThan(0);
    for (const rule of off) expect('changesLessons' in rule && rule.changesLessons, rule.id).toBeFalsy();
  });
});
