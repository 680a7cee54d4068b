import { describe, expect, it } from 'vitest';
import { loadLessons } from '@/app/lessons/load-lessons';
import { lessonInFeet } from '@/lib/lesson/in-feet';
import { lessonWorld } from '@/lib/lesson/expression/lesson-world';
import { goalStateOf } from '@/lib/lesson/questions/goal';
import { subjectOf } from '@/lib/lesson/questions/subject';
import { diveOf } from '../read';

describe('a dive to try, written in feet', () => {
  it.each(loadLessons())(
    'in lesson $slug meets its goal as in metres, and not before it is mended',
    ({ lesson: shipped }) => {
      const lesson = lessonInFeet(shipped);
      const worlds = lessonWorld(lesson);
      for (const step of lesson.steps) {
        if (step.kind !== 'try') continue;
        const begun = worlds.about(step.script).subject.dive;
        const first = Object.values(lesson.scripts)[0]!.script;
        const given = step.script === undefined ? first : lesson.scripts[step.script]!.script;
        const stands = (script: string) =>
          goalStateOf(
            step,
            begun,
            worlds.aboutDive(subjectOf(diveOf(script), worlds.rulesOf(step.script))),
            'imperial',
          );
        expect(step.reach).not.toMatch(/\d m\b|m\/min/);
        const missed = stands(step.reach).clauses.filter(({ met }) => !met);
        expect(missed, step.reach).toEqual([]);
        expect(stands(given).met).toBe(false);
      }
    },
    60_000,
  );
});
