import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { knownNames } from '@/app/stage/known-names';
import { lessonFiles, readGlossary } from '@/app/lessons/read-content';
import { parseScript } from '@/lib/dive/script';
import { lessonInFeet } from '@/lib/lesson/in-feet';
import { lessonWorld } from '@/lib/lesson/expression/lesson-world';
import { goalStateOf } from '@/lib/lesson/questions/goal';
import { subjectOf } from '@/lib/lesson/questions/subject';
import { readLesson } from '@/lib/lesson/read-lesson';

const known = knownNames(readGlossary());

function diveOf(script: string) {
  const parsed = parseScript(script);
  if (!parsed.ok) throw new Error(parsed.errors[0]!.message);
  return parsed.dive;
}

describe('a dive to try, written in feet', () => {
  it.each(lessonFiles())(
    'in lesson $slug meets its goal as in metres, and not before it is mended',
    ({ path }) => {
      const read = readLesson(readFileSync(path, 'utf8'), { known, draws: 0 });
      if (!read.ok) throw new Error('the lesson does not read');
      const lesson = lessonInFeet(read.lesson);
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
