import { describe, expect, it } from 'vitest';
import { askMoment } from '@/lib/class/ask-moment';
import { atMoment, DIVE_ASKS } from '@/lib/class/dive-asks';
import { lessonWorld } from '@/lib/lesson/expression/lesson-world';
import { judgeAmount } from '@/lib/lesson/questions/judge';
import { becauseOf } from '@/lib/class/reasons';
import { inUnits } from '@/lib/class/words';
import { truthSchema, type TruthOf } from '@/lib/class/ask';
import { gasDensitiesOf } from '@/lib/exposure/gas-density';
import { oxygenExposureOf } from '@/lib/exposure/oxygen-exposure';
import { exposureSayings } from '@/lib/sayings/exposure-readings';
import { figuresAt } from '@/lib/ascent/figures';
import { figuresOf } from '@/lib/ascent/figures';
import { samplingOf } from '@/lib/dive/sampling';
import { computeTimeline } from '@/lib/dive/timeline';
import { modelSayings, type ModelReadingId } from '@/lib/sayings/model-readings';
import { diveOf } from '../read';

/* Invented: stayed too long at thirty metres. */
const SCRIPT = `gas: air
gradient factors: 85/85
descend to 30 m at 18 m/min
stay 28 min
ascend to 3 m at 9 m/min
stay 20 min
ascend to surface at 9 m/min`;

const named = (id: string) => DIVE_ASKS.find((one) => one.id === id)!;
const ask = (id: string, atS: number, script = SCRIPT) => askMoment(named(id), { title: 'A dive', script, atS });
function truthOf(id: string, atS: number) {
  const made = ask(id, atS);
  if (!made.ok) throw new Error(made.why);
  return made.truth;
}
const numberTruth = (id: string, atS: number) => truthOf(id, atS) as TruthOf<'number'>;
const said = (id: string, atS: number, value: number) => {
  const because = becauseOf({ by: 'number', value }, truthOf(id, atS), {});
  return because && 'words' in because ? inUnits(because.words, 'metric') : undefined;
};

describe('a covered reading that is asked about', () => {
  const dive = diveOf(SCRIPT);
  const { everyS } = samplingOf(dive, 30);
  const timeline = computeTimeline(dive, everyS);
  const figures = figuresOf(timeline, dive.settings);
  const MODEL: readonly ModelReadingId[] = [
    'no-stop',
    'ceiling',
    'time-to-surface',
    'supersaturation',
    'surfacing-supersaturation',
  ];

  it.each([300, 600, 1500, 1800, 2000])('has the very figure the reading shows, %i s into the dive', (atS) => {
    const sample = timeline.timeS.findIndex((timeS) => timeS >= atS);
    const moment = { timeline, sample, now: figuresAt(timeline, figures, sample) };
    for (const id of MODEL) {
      const asked = DIVE_ASKS.find(({ reading, question }) => reading === id && question.by === 'number')!;
      const made = ask(asked.id, atS);
      if (!made.ok || (id === 'ceiling' && moment.now.ceiling.depthM === 0)) continue;
      for (const system of ['metric', 'imperial'] as const)
        expect((made.truth as TruthOf<'number'>).printed[system], id).toBe(modelSayings(moment, system)[id].text);
    }
  });

  it('has the very figure the reading shows, of oxygen, density and depth too', () => {
    const rich = SCRIPT.replace('gas: air', 'gas: 32%');
    const dive = diveOf(rich);
    const line = computeTimeline(dive, samplingOf(dive, 30).everyS);
    const sample = line.timeS.findIndex((timeS) => timeS >= 1740);
    const [oxygen, densitiesGL] = [oxygenExposureOf(line), gasDensitiesOf(line)];
    const moment = { timeline: line, sample, oxygen, densitiesGL, supply: undefined };
    const now = figuresAt(line, figuresOf(line, dive.settings), sample);
    const truth = (id: string) => ask(id, line.timeS[sample]!, rich) as { truth: TruthOf<'number'> };
    for (const system of ['metric', 'imperial'] as const) {
      const said = exposureSayings(moment, system);
      for (const id of ['oxygen-single', 'oxygen-daily', 'oxygen-pulmonary', 'gas-density'] as const)
        expect(truth(id).truth.printed[system], id).toBe(said[id].text);
      expect(truth('depth').truth.printed[system]).toBe(
        modelSayings({ timeline: line, sample, now }, system).depth.text,
      );
    }
  });

  it('is the speed the script says, up or down', () => {
    expect(numberTruth('rate', 60).value).toBeCloseTo(18, 0);
    expect(numberTruth('rate', 1850).value).toBeCloseTo(9, 0);
    expect(numberTruth('rate', 900).value).toBe(0);
  });

  it.each([300, 600, 1500, 1800, 2000])('travels with its reasons inside the bounds, %i s into the dive', (atS) => {
    for (const { id } of DIVE_ASKS) {
      const made = ask(id, atS);
      if (made.ok) expect(truthSchema.safeParse(made.truth).success, id).toBe(true);
    }
  });

  it('says nothing with a value left out, and the right answer has no reply of a mistake', () => {
    for (const { id } of DIVE_ASKS)
      for (const atS of [300, 1500, 2000]) {
        const made = ask(id, atS);
        if (made.ok) expect(JSON.stringify(made.truth), id).not.toMatch(/\{\{|undefined|NaN/);
      }
  });
});

describe('a wrong answer to a covered reading', () => {
  it('that is what a rested diver would have is told so', () => {
    const { value } = numberTruth('no-stop', 480);
    const fresh = said('no-stop', 480, value + 6.5);
    expect(fresh).toMatch(/rested diver set down here would have: \d+ min/);
    expect(said('no-stop', 480, value + 40)).toMatch(/past its limit at the surface/);
    expect(said('no-stop', 480, 0)).toMatch(/too strict/);
  });

  it('that is the climb without its stops, or the stops alone, is told so', () => {
    const { value } = numberTruth('time-to-surface', 1780);
    expect(said('time-to-surface', 1780, 3.2)).toMatch(/climb alone/);
    expect(said('time-to-surface', 1780, value - 3.3)).toMatch(/stops alone/);
    expect(said('time-to-surface', 1780, value + 9)).toMatch(/It takes less/);
  });

  it('that is the depth of the stop in place of the ceiling is told so', () => {
    const { value } = numberTruth('ceiling', 1780);
    expect(said('ceiling', 1780, 0)).toMatch(/There is one/);
    expect(said('ceiling', 1780, value + 25)).toMatch(/where the diver is|deeper than any/);
  });

  it('about the stop is told where it is, or that there is none', () => {
    const none = truthOf('stop', 300);
    expect(none).toMatchObject({ by: 'choice', right: 0 });
    const owed = truthOf('stop', 1780);
    expect(owed).toMatchObject({ by: 'choice', right: 1 });
    const because = becauseOf({ by: 'choice', option: 0 }, owed, {});
    expect(because && 'words' in because && inUnits(because.words, 'imperial')).toMatch(
      /first stop is at \d+ ft for \d+ min/,
    );
  });

  it('about the leading compartment is told whether that one is faster or slower', () => {
    const truth = truthOf('leader', 480);
    const words = (compartment: number) => {
      const because = becauseOf({ by: 'leader', compartment }, truth, {});
      return because && 'words' in because ? inUnits(because.words, 'metric') : undefined;
    };
    expect(truth).toMatchObject({ by: 'leader' });
    expect(words(16)).toMatch(/lower limit/);
    expect(words((truth as TruthOf<'leader'>).compartment)).toBeUndefined();
  });
});

describe('a usual mistake', () => {
  it('comes to something at some moment: none is written so that it can never be worked out', () => {
    const world = lessonWorld({ scripts: { dive: { title: 'A dive', script: SCRIPT } } }).about();
    for (const { id, question } of DIVE_ASKS)
      for (const { value, near } of question.by === 'choice' ? [] : question.mistakes) {
        expect(judgeAmount(near, world).ok, `${id}: ${near}`).toBe(true);
        expect(
          [480, 1780].some((atS) => judgeAmount(atMoment(value, atS), world).ok),
          `${id}: ${value}`,
        ).toBe(true);
      }
  });
});

describe('a question in bar', () => {
  it('is in bar for readers of either system, as its reading is', () => {
    expect(numberTruth('oxygen-pressure', 480).printed).toEqual({ metric: '0.84', imperial: '0.84' });
    expect(said('oxygen-pressure', 480, 0.63)).toMatch(/water alone.*4\.01 bar in all/);
  });
});

describe('a question that can’t be asked at a moment', () => {
  it('says why and where it can', () => {
    expect(ask('no-stop', 10)).toMatchObject({ ok: false, why: expect.stringMatching(/over 99 min/) });
    expect(ask('cylinder', 300)).toMatchObject({ ok: false, why: expect.stringMatching(/no figure/) });
  });
});
