import { describe, expect, it } from 'vitest';
import { knownNames } from '@/app/stage/known-names';
import { prepareLesson } from '@/app/lessons/prepare-lesson';
import { loadLessons } from '@/app/lessons/load-lessons';
import { readGlossary } from '@/app/lessons/read-content';
import { checkLesson } from '@/lib/lesson/checking/check-lesson';
import { honestMinutes, shelfMinutes, wordsIn } from './honest-minutes';
import { LEVELS } from '@/lib/lesson/lesson';

/** How often each question is drawn: with another seed each time. */
const DRAWS = 40;
/** At 390 × 844 more than these would have to be scrolled in a box of their own; measured in a browser. */
const MOST_GOAL_WORDS = 55;
const MOST_GOAL_PARTS = 7;

const known = knownNames(readGlossary());
const files = loadLessons();

describe.each(files)('the shipped lesson $slug', ({ slug, text, lesson }) => {
  it('reads, and every claim, answer, goal and value in it is what the engine says', () => {
    const faults = checkLesson(lesson, { known, draws: DRAWS });
    expect(faults.map(({ path, what, mend }) => `${path.join('.')}: ${what} ${mend}`)).toEqual([]);
  }, 120_000);

  it('stands in its place on the shelf', () => {
    expect(lesson.number).toBe(Number(slug.slice(0, 2)));
    expect(lesson.after.every((number) => number < lesson.number!)).toBe(true);
  });

  it('takes as long as it says, by its words, runs and questions', () => {
    expect(lesson.minutes).toBe(shelfMinutes(honestMinutes(lesson)));
  });

  it('says no more than 180 words before there is something to do; the rest is folded away', () => {
    for (const step of lesson.steps) {
      const asked = step.kind === 'predict' ? (step.choice ?? []).map(({ text }) => text) : [];
      const summed = step.kind === 'recap' ? step.points : [];
      expect(wordsIn([step.title, step.text, ...asked, ...summed]), step.id).toBeLessThanOrEqual(180);
    }
  });

  it('says a goal in so few words that it is seen with its dive in one window of a phone', () => {
    for (const step of lesson.steps) {
      if (step.kind !== 'try') continue;
      // What is asked stands in the list under it, with what is so.
      expect(wordsIn([step.text]), step.id).toBeLessThanOrEqual(MOST_GOAL_WORDS);
      expect(step.goal.split(' and ').length, step.id).toBeLessThanOrEqual(MOST_GOAL_PARTS);
    }
  });

  it('asks before it shows, opens a working, sets a goal, checks and sums up', () => {
    const kinds = lesson.steps.map(({ kind }) => kind);
    expect(kinds).toEqual(expect.arrayContaining(['predict', 'explain', 'try', 'check', 'recap']));
    expect(kinds.indexOf('predict')).toBeLessThan(kinds.includes('run') ? kinds.lastIndexOf('run') : kinds.length);
    expect(kinds.at(-1)).toBe('recap');
  });

  it('has notes for whoever teaches it, and terms to look up', () => {
    const noted = lesson.steps.filter(({ notes }) => notes !== undefined);
    expect(noted.length).toBeGreaterThanOrEqual(3);
    expect(lesson.steps.some(({ notes }) => (notes?.wrong.length ?? 0) > 0)).toBe(true);
    expect(text).toMatch(/\]\(term:[a-z-]+\)/);
  });

  it('is set for the screen with every formula sound and no value left open', () => {
    const texts = textsOf(prepareLesson(lesson, slug, () => undefined));
    // A formula that cannot be set is shown as its source, which holds a backslash.
    expect(texts.filter((html) => /<code>[^<]*\\/.test(html) || html.includes('{{'))).toEqual([]);
    expect(texts.length).toBeGreaterThan(10);
  }, 60_000);

  it('types no depth or pressure by hand, so that every reader has their own units', () => {
    const prose = text
      .replace(/^\s*(script|reach): \|\n(?:(?: {6,}.*|)\n)+/gm, '')
      .replace(/\{\{[^}]*\}\}/g, '')
      // Given in both, as a common practice is.
      .replace(/\d+ m \(\d+ ft\)/g, '');
    const lines = prose
      .split('\n')
      .filter(
        (line) =>
          /^\s*(text|ask|because|otherwise|after|tempts|answer|opening|summary|tip|points|-)/.test(line) ||
          !/:/.test(line),
      );
    const typed = lines.filter((line) =>
      /\d\s?(m|ft|bar|psi)\b(?!\/)/.test(
        line
          .replace(/(holds|when|answer|within|value|goal|at|from|to|step|upTo|of|claims?):.*$/, '')
          .replace(/^\s*- (?=.*(==|>|<)).*$/, ''),
      ),
    );
    expect(typed).toEqual([]);
  });
});

/** Every text of a prepared lesson that is shown as it stands: not scripts, nor what is worked out later. */
function textsOf(value: unknown): string[] {
  if (typeof value === 'string') return [value];
  if (Array.isArray(value)) return value.flatMap(textsOf);
  if (typeof value !== 'object' || value === null) return [];
  return Object.entries(value).flatMap(([key, one]) =>
    ['question', 'slots', 'scripts', 'goal', 'when', 'reach'].includes(key) ? [] : textsOf(one),
  );
}

describe('the shelf', () => {
  it('numbers its lessons one after another', () => {
    expect(files.map(({ slug }) => Number(slug.slice(0, 2)))).toEqual(files.map((_, index) => index + 1));
  });

  it('runs in the order of its numbers, level by level, and leads only to lessons there are', () => {
    const places = files.map(({ lesson }) => LEVELS.indexOf(lesson.level));
    expect(places).toEqual([...places].sort((one, other) => one - other));
    const led = files.flatMap(({ text }) => [...text.matchAll(/\]\(lesson:(\d+)\)/g)].map(([, to]) => Number(to)));
    expect(led.filter((to) => to < 1 || to > files.length)).toEqual([]);
  });

  it('explains every term a lesson links to, and links within the glossary lead somewhere', () => {
    const terms = readGlossary();
    const ids = new Set(terms.map(({ id }) => id));
    const broken = terms.flatMap(({ id, means }) =>
      [...means.matchAll(/\]\(term:([a-z-]+)\)/g)].filter(([, to]) => !ids.has(to!)).map(([, to]) => `${id} → ${to}`),
    );
    expect(broken).toEqual([]);
  });
});
