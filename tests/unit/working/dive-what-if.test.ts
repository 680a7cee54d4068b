import { describe, expect, it } from 'vitest';
import { figuresOf } from '@/lib/ascent/figures';
import { setStepDepth, setStepDuration } from '@/lib/dive/edit';
import { parseScript } from '@/lib/dive/script';
import { computeTimeline, sampleAt } from '@/lib/dive/timeline';
import { READING_IDS, workingFor } from '@/lib/working/all';
import { workingOfChangedDive } from '@/lib/working/dive-what-if';
import { changeableValues } from '@/lib/working/what-if';

const SCRIPT = `gas: air
gradient factors: 50/85
descend to 18 m at 18 m/min
stay 10 min
descend to 30 m at 9 m/min
stay 22 min
ascend to 5 m at 9 m/min
stay 3 min
ascend to surface at 9 m/min
`;

/** What the desk works out of a script, with a sample so long into the second stay. */
function desk(script: string, intoS: number) {
  const parsed = parseScript(script);
  if (!parsed.ok) throw new Error(parsed.errors[0]!.message);
  const nowS = computeTimeline(parsed.dive, 600).legs[3]!.startS + intoS;
  const timeline = computeTimeline(parsed.dive, 1, { alsoEveryS: [nowS] });
  return { timeline, figures: figuresOf(timeline, parsed.dive.settings), sample: sampleAt(timeline, nowS + 1e-6) };
}

const INTO_S = 1200;
const before = desk(SCRIPT, INTO_S);
const { sample } = before;

describe('a step’s number changed in a working', () => {
  it('is changed in the dive, and the stay goes with its depth', () => {
    const now = workingFor('required-stop', before.timeline, before.figures, sample);
    const shallower = desk(SCRIPT.replace('descend to 30 m', 'descend to 20 m'), INTO_S);
    const own = workingFor('required-stop', shallower.timeline, shallower.figures, shallower.sample);
    const changed = workingOfChangedDive('required-stop', SCRIPT, { ...before, sample }, 'd_3_end', 20)!;
    expect(changed.answer.value).toBeCloseTo(own.answer.value, 9);
    expect(changed.answer.value).toBeLessThan(now.answer.value);
    expect(changed.steps.map(({ result }) => result.value)).toEqual(
      own.steps.map(({ result }) => expect.closeTo(result.value, 6) as number),
    );
  });

  it('says what the desk says after the same edit, for every number of a step in every working', () => {
    let asked = 0;
    for (const reading of READING_IDS) {
      const working = workingFor(reading, before.timeline, before.figures, sample);
      for (const [symbol, { value, unit }] of changeableValues(working)) {
        const [, what, number, end] = /^([dt])(?:_(\d+)(_end)?)?$/.exec(symbol) ?? [];
        if (!what || (what === 't' && number === undefined)) continue;
        const leg = number === undefined ? 4 : Number(number);
        // The surface is where the first leg begins: no step says it.
        const changedTo = unit === 'm' ? value - 2 : value * 0.8;
        const said = workingOfChangedDive(reading, SCRIPT, { ...before, sample }, symbol, changedTo);
        if (what === 'd' && leg === 1 && !end) {
          expect(said, symbol).toBeUndefined();
          continue;
        }
        // Steps are numbered from 0: legs 2 and 4 are stays, whose depth the change before them says.
        const step = what === 't' ? leg - 1 : end || leg % 2 === 0 ? leg - 1 : leg - 2;
        const now = what === 't' && leg === 4;
        const edited = now
          ? SCRIPT
          : what === 't'
            ? setStepDuration(SCRIPT, step, changedTo * 60)
            : setStepDepth(SCRIPT, step, changedTo);
        const after = desk(edited, now ? changedTo * 60 : INTO_S);
        const own = workingFor(reading, after.timeline, after.figures, after.sample);
        expect(said, `${reading} ${symbol}`).toBeDefined();
        expect(said!.answer.value, `${reading} ${symbol}`).toBeCloseTo(own.answer.value, 6);
        asked += 1;
      }
    }
    expect(asked).toBeGreaterThan(20);
  });
});
