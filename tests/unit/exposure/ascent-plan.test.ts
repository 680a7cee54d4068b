import { describe, expect, it } from 'vitest';
import { figuresOf } from '@/lib/ascent/figures';
import { writeScript, parseScript } from '@/lib/dive/script';
import { computeTimeline } from '@/lib/dive/timeline';
import { ascentPlanOf, bottomOf, plannedDive } from '@/lib/exposure/ascent-plan';
import { runTimeTable } from '@/lib/exposure/run-time-table';
import { saySlip, variantsOf } from '@/lib/exposure/variants';
import { scripted } from './scripted';

const STAGED = scripted(
  'gradient factors: 30/80',
  'gas: 18/45',
  'carry: 50% from 21 m, oxygen from 6 m',
  'descend to 60 m at 20 m/min',
  'stay 20 min',
  'ascend to 6 m at 9 m/min',
  'stay 30 min',
  'ascend to surface at 9 m/min',
);

describe('what is meant before the ascent', () => {
  it('ends with the last moment at the deepest point', () => {
    expect(bottomOf(STAGED).steps).toEqual(STAGED.steps.slice(0, 2));
    const twice = scripted(
      'descend to 30 m at 30 m/min',
      'stay 5 min',
      'ascend to 20 m at 9 m/min',
      'stay 5 min',
      'descend to 30 m at 30 m/min',
      'stay 5 min',
      'ascend to surface at 9 m/min',
    );
    expect(bottomOf(twice).steps).toHaveLength(6);
  });

  it('is taken from one dive of the day, with those before it', () => {
    const day = scripted(
      'descend to 30 m at 30 m/min',
      'ascend to surface at 9 m/min',
      'interval 1 h',
      'descend to 20 m at 20 m/min',
      'stay 5 min',
      'ascend to surface at 9 m/min',
    );
    expect(bottomOf(day).steps).toHaveLength(5);
    expect(bottomOf(day, 0).steps).toHaveLength(1);
  });
});

describe('the planned ascent', () => {
  const plan = ascentPlanOf(STAGED);
  const dive = plannedDive(plan);

  it('begins where the bottom ends', () => {
    expect(plan).toMatchObject({ ascentFromS: 23 * 60, depthM: 60, gas: { o2: 0.18, he: 0.45 } });
  });

  it('written out as steps ends at the surface, as long as the schedule says', () => {
    const timeline = computeTimeline(dive, 60);
    expect(timeline.depthM.at(-1)).toBe(0);
    expect(timeline.timeS.at(-1)! - plan.ascentFromS).toBeCloseTo(plan.schedule.timeToSurfaceMin * 60, 6);
  });

  it('never takes the diver above the model’s ceiling', () => {
    const timeline = computeTimeline(dive, 5);
    const { ceilingM } = figuresOf(timeline, dive.settings);
    timeline.depthM.forEach((depthM, i) => expect(depthM).toBeGreaterThanOrEqual(ceilingM[i]! - 1e-6));
  });

  it('can be written as a script and read again', () => {
    expect(parseScript(writeScript(dive))).toMatchObject({ ok: true });
  });
});

describe('a run-time table', () => {
  const rows = runTimeTable(plannedDive(ascentPlanOf(STAGED)));

  it('goes on without a gap from the surface to the surface', () => {
    expect(rows[0]).toMatchObject({ action: 'descend', fromM: 0, toM: 60, startMin: 0, endMin: 3 });
    expect(rows.at(-1)!.toM).toBe(0);
    rows.slice(1).forEach((row, i) => {
      expect(row.startMin).toBeCloseTo(rows[i]!.endMin, 9);
      expect(row.fromM).toBe(rows[i]!.toM);
      expect(row.endMin - row.startMin).toBeCloseTo(row.minutes, 9);
    });
  });

  it('says what to do, where, and when a gas is taken up', () => {
    expect(rows.slice(0, 3).map(({ action }) => action)).toEqual(['descend', 'stay', 'ascend']);
    expect(rows.filter(({ action }) => action === 'stop').map(({ toM }) => toM)).toEqual(
      ascentPlanOf(STAGED).schedule.stops.map(({ depthM }) => depthM),
    );
    expect(rows.filter(({ switched }) => switched).map(({ fromM, gas }) => [fromM, gas.o2])).toEqual([
      [21, 0.5],
      [6, 1],
    ]);
  });

  it('takes stretches that say the same as one line', () => {
    const dive = scripted(
      'descend to 10 m at 10 m/min',
      'descend to 20 m at 10 m/min',
      'stay 5 min',
      'stay 5 min',
      'ascend to 10 m at 9 m/min',
      'ascend to surface at 3 m/min',
    );
    expect(runTimeTable(dive).map(({ action, toM, minutes }) => [action, toM, Number(minutes.toFixed(6))])).toEqual([
      ['descend', 20, 2],
      ['stay', 20, 10],
      ['ascend', 10, 1.111111],
      ['ascend', 0, 3.333333],
    ]);
  });

  it('looks at one dive of the day, on its own clock', () => {
    const day = scripted(
      'descend to 10 m at 10 m/min',
      'ascend to surface at 10 m/min',
      'interval 1 h',
      'descend to 20 m at 10 m/min',
      'ascend to surface at 10 m/min',
    );
    expect(runTimeTable(day, 1)[0]).toMatchObject({ toM: 20, startMin: 0, endMin: 2 });
  });
});

describe('variants beside a plan', () => {
  const variants = variantsOf(STAGED);
  const of = (title: string) => variants.find((one) => one.title === title)!;

  it('are the plan, then each slip and all of them at once, those that take longest first', () => {
    const [planned, ...others] = variants;
    expect(planned).toMatchObject({ title: 'as planned', slips: [], longerMin: 0 });
    expect(others.map(({ title }) => title).sort()).toEqual([
      '2 m deeper',
      '5 min longer',
      '50% lost',
      'all at once',
      'oxygen lost',
    ]);
    expect(others[0]!.title).toBe('all at once');
    others.slice(1).forEach(({ longerMin }, index) => {
      expect(longerMin).toBeGreaterThan(0);
      expect(longerMin).toBeLessThanOrEqual(others[index]!.longerMin);
    });
    const { plan } = of('all at once');
    expect([plan.depthM, plan.bottom.settings.carried]).toEqual([62, []]);
    expect(plan.ascentFromS).toBeCloseTo((62 / 20 + 25) * 60, 9);
  });

  it('are those that are looked at, and no slip alone is said to be all at once', () => {
    const longer = variantsOf(STAGED, { slips: [{ kind: 'longer' }] });
    expect(longer.map(({ title }) => title)).toEqual(['as planned', '5 min longer']);
    expect(saySlip({ kind: 'deeper' }, { system: 'imperial' })).toBe('10 ft deeper');
  });

  it('never breathe the gas that is lost', () => {
    const { schedule } = of('50% lost').plan;
    expect(schedule.parts.some(({ gas }) => gas.o2 === 0.5)).toBe(false);
    expect(schedule.parts.some(({ gas }) => gas.o2 === 1)).toBe(true);
  });

  it('stay longer, or go deeper at the same rate', () => {
    expect(of('5 min longer').plan.ascentFromS).toBe(28 * 60);
    const { plan } = of('2 m deeper');
    expect(plan.depthM).toBe(62);
    expect(plan.ascentFromS).toBeCloseTo((62 / 20 + 20) * 60, 9);
  });

  it('deepen only the dive that is planned, and only its deepest part', () => {
    const day = scripted(
      'descend to 40 m at 20 m/min',
      'ascend to surface at 9 m/min',
      'interval 1 h',
      'descend to 20 m at 20 m/min',
      'ascend to 10 m at 10 m/min',
      'stay 3 min',
      'descend to 20 m at 10 m/min',
      'stay 3 min',
      'ascend to surface at 9 m/min',
    );
    const deeper = variantsOf(day, { slips: [{ kind: 'deeper' }] })[1]!.plan.bottom;
    expect(deeper.steps.flatMap((step) => ('toM' in step ? [step.toM] : []))).toEqual([40, 0, 22, 10, 22]);
    expect(deeper.steps[4]).toMatchObject({ toM: 10, durationS: expect.closeTo(72, 9) });
  });
});
