import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { diveSchema } from '@/lib/dive/dive';
import { removeStep, setStepDepth, setStepDuration, setStepRate } from '@/lib/dive/edit/edit-steps';
import { setSetting } from '@/lib/dive/edit/edit-settings';
import { parseScript, writeScript } from '@/lib/dive/script';
import { remarkFrom } from '@/lib/dive/script/read-line';
import { scriptReference } from '@/lib/dive/script-reference';
import { anyDive, anyWrittenScript } from './dives';
import { law } from './law';

const writtenScript = anyDive.chain((dive) => anyWrittenScript(writeScript(dive)));

const WORDS = [
  ...scriptReference.flatMap(({ name, also, examples }) => [name, ...also, ...examples]),
  ...[
    ' to ',
    ' at ',
    ' in ',
    ' for ',
    ' from ',
    '30 m',
    '18 m/min',
    '2 min',
    '1,200',
    '-',
    '#',
    ':',
    '=',
    '/',
    '%',
    ',',
    '\r',
    '\n',
    '\u00a0',
    '“',
    '🐟',
    'İ',
  ],
];
const wordSoup = fc
  .array(fc.oneof(fc.constantFrom(...WORDS), fc.string({ maxLength: 4 })), { maxLength: 40 })
  .map((words) => words.join(''));

/** A script with bits cut out, doubled and put in. */
const damagedScript = fc
  .tuple(
    writtenScript,
    fc.array(
      fc.tuple(
        fc.nat(),
        fc.nat({ max: 12 }),
        fc.oneof(fc.constantFrom(...WORDS), fc.string({ unit: 'binary', maxLength: 3 })),
      ),
      { maxLength: 4 },
    ),
  )
  .map(([text, cuts]) =>
    cuts.reduce((whole, [at, length, put]) => {
      const from = at % (whole.length + 1);
      return whole.slice(0, from) + put + whole.slice(from + length);
    }, text),
  );

const anyText = fc.oneof(
  fc.string({ unit: 'binary', maxLength: 200 }),
  fc.string({ maxLength: 200 }),
  wordSoup,
  damagedScript,
);

describe('for any text at all', () => {
  it('parsing gives a dive that fits its schema, or mistakes that each lie on the text and say how to mend them', () => {
    law(
      fc.property(anyText, (text) => {
        const parsed = parseScript(text);
        const lines = text.split(/\r\n|\r|\n/);
        if (parsed.ok) expect(diveSchema.safeParse(parsed.dive).success).toBe(true);
        else expect(parsed.errors.length).toBeGreaterThan(0);
        for (const { line, column, endColumn, message, mend } of [
          ...(parsed.ok ? [] : parsed.errors),
          ...parsed.warnings,
        ]) {
          const length = lines[line - 1]?.length ?? -1;
          expect(column).toBeGreaterThanOrEqual(1);
          expect(endColumn).toBeGreaterThan(column);
          expect(endColumn).toBeLessThanOrEqual(length + 1);
          expect(message).toMatch(/\S.*[.?]$/s);
          expect(mend).toMatch(/\S.*[.?]$/s);
        }
      }),
      3000,
    );
  });

  it('parsing twice says the same', () => {
    law(
      fc.property(anyText, (text) => {
        const first = parseScript(text);
        expect(parseScript(text)).toEqual(first);
      }),
      300,
    );
  });

  it('a script that reads comes back as it was, but for a carriage return alone', () => {
    law(
      fc.property(anyText, (text) => {
        const parsed = parseScript(text);
        if (parsed.ok) expect(writeScript(parsed.dive)).toBe(text.replace(/\r(?!\n)/g, '\n'));
      }),
      2000,
    );
  });

  it('an edit changes nothing or gives a text that reads', () => {
    law(
      fc.property(anyText, fc.nat({ max: 12 }), fc.double(), (text, step, value) => {
        for (const edited of [
          setStepDepth(text, step, value),
          setStepDuration(text, step, value),
          setStepRate(text, step, value),
          removeStep(text, step),
        ]) {
          if (edited !== text) expect(parseScript(edited)).toMatchObject({ ok: true });
        }
      }),
      1000,
    );
  });
});

describe('for any dive', () => {
  it('writing and reading it gives the very same dive', () => {
    law(
      fc.property(anyDive, (dive) => {
        const parsed = parseScript(writeScript(dive));
        expect(parsed).toMatchObject({ ok: true });
        if (!parsed.ok) return;
        expect(parsed.dive.settings).toEqual(dive.settings);
        expect(parsed.dive.steps).toEqual(dive.steps);
      }),
      1000,
    );
  });

  it('other words, spaces, remarks and line ends mean the same and come back as written', () => {
    law(
      fc.property(
        anyDive.chain((dive) => fc.tuple(fc.constant(dive), anyWrittenScript(writeScript(dive)))),
        ([dive, text]) => {
          const parsed = parseScript(text);
          expect(parsed).toMatchObject({ ok: true });
          if (!parsed.ok) return;
          expect(parsed.dive.steps).toEqual(dive.steps);
          expect(writeScript(parsed.dive)).toBe(text);
        },
      ),
      500,
    );
  });
});

/** The remarks of a script, in order. */
const remarksOf = (text: string) =>
  text
    .split('\n')
    .map((line) => line.slice(remarkFrom(line)).trim())
    .filter((remark) => remark !== '');

const stepsOf = (text: string) => {
  const parsed = parseScript(text);
  return parsed.ok ? parsed.dive.steps : [];
};

type Edit = (text: string) => string;
const stepIndex = fc.integer({ min: -1, max: 30 });
const anyEdit: fc.Arbitrary<Edit> = fc.oneof(
  fc.tuple(stepIndex, fc.double({ min: -10, max: 400, noNaN: true })).map(
    ([i, m]): Edit =>
      (text) =>
        setStepDepth(text, i, m),
  ),
  fc.tuple(stepIndex, fc.integer({ min: 0, max: 40 })).map(
    ([i, m]): Edit =>
      (text) =>
        setStepDepth(text, i, m),
  ),
  fc.tuple(stepIndex, fc.double({ min: 0, max: 9000, noNaN: true })).map(
    ([i, s]): Edit =>
      (text) =>
        setStepDuration(text, i, s),
  ),
  fc.tuple(stepIndex, fc.double({ min: 0, max: 300, noNaN: true })).map(
    ([i, rate]): Edit =>
      (text) =>
        setStepRate(text, i, rate),
  ),
  stepIndex.map(
    (i): Edit =>
      (text) =>
        removeStep(text, i),
  ),
  fc
    .constantFrom(...scriptReference.filter(({ kind }) => kind === 'setting'))
    .chain(({ name, examples }) =>
      fc
        .constantFrom(...examples.map((line) => line.slice(name.length + 2)), undefined)
        .map((value) => [name, value] as const),
    )
    .map(
      ([name, value]): Edit =>
        (text) =>
          setSetting(text, name, value),
    ),
);

describe('for any script and any edits of it', () => {
  it('the text reads after each of them, and every remark is still there', () => {
    law(
      fc.property(writtenScript, fc.array(anyEdit, { maxLength: 8 }), (script, edits) => {
        let text = script;
        for (const edit of edits) {
          text = edit(text);
          expect(parseScript(text)).toMatchObject({ ok: true });
        }
        expect(remarksOf(text)).toEqual(remarksOf(script));
      }),
      600,
    );
  });

  it('moving a depth puts it within a step of where it was asked for, and leaves the number of steps alone', () => {
    law(
      fc.property(
        writtenScript,
        fc.nat({ max: 20 }),
        fc.double({ min: 0, max: 350, noNaN: true }),
        (text, index, depthM) => {
          const before = stepsOf(text);
          const after = stepsOf(setStepDepth(text, index, depthM));
          expect(after).toHaveLength(before.length);
          const [old, moved] = [before[index], after[index]];
          if (!old || !moved || !('toM' in old) || !('toM' in moved) || old.toM === 0) return;
          // Rounded to 0.1 m, and at most two steps aside of its neighbours.
          expect(Math.abs(moved.toM - depthM)).toBeLessThanOrEqual(0.2501);
        },
      ),
      600,
    );
  });

  it('changing the time of a stay changes that alone, to the second', () => {
    law(
      fc.property(writtenScript, fc.nat({ max: 20 }), fc.integer({ min: 1, max: 7200 }), (text, index, durationS) => {
        const before = stepsOf(text);
        if (before[index]?.kind !== 'stay') return;
        expect(stepsOf(setStepDuration(text, index, durationS))).toEqual(
          before.with(index, { kind: 'stay', durationS }),
        );
      }),
      600,
    );
  });
});
