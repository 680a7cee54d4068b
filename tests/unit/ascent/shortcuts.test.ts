import { afterEach, describe, expect, it, vi } from 'vitest';
import { ascentStartAt } from '@/lib/ascent/plan/ascent-start';
import { figuresOf, type Figures } from '@/lib/ascent/figures';
import { GasPath } from '@/lib/ascent/gas-path';
import { ascentPlanner, type Schedule } from '@/lib/ascent/plan/schedule';
import { standingsAlong } from '@/lib/ascent/standings';
import { stopChanges } from '@/lib/ascent/stop-changes';
import { surelyFree } from '@/lib/ascent/surely-free';
import { TissuesUnderWay } from '@/lib/ascent/plan/tissues-under-way';
import { WaysUp } from '@/lib/ascent/plan/ways-up';
import { computeTimeline, type Timeline } from '@/lib/dive/timeline';
import { compartments } from '@/lib/tissue/coefficients';
import type { ToldDay } from '../../laws/second-model/told-day';
import { DAYS, differencesBySampling, engineOf } from './days';

/*
 * What is told without following a way closely is what following it tells; and how many ways are followed closely, which
 * is what the shortcuts are for: a picture asks for thousands. They are counted, since a clock tells of the machine.
 */

afterEach(() => void vi.restoreAllMocks());

/** Moments that are no multiple of a minute, so that a stop's unit is under way at most of them. */
const EVERY_S = 41;

/** The way up from each moment of a day. */
function plansOf(day: ToldDay): Schedule[] {
  const { timeline, figures } = engineOf(day, EVERY_S);
  return plansAlong(timeline, figures);
}

function plansAlong(timeline: Timeline, figures: Figures): Schedule[] {
  const planAscent = ascentPlanner(figures.limits, timeline);
  return Array.from(timeline.timeS, (_, i) => planAscent(ascentStartAt(timeline, figures, i)));
}

/** The steps of the planner that spare it work, as a test reaches them. */
type Shortcuts = { settledByEnds(): boolean | undefined; lineMayMove(): boolean; staysFree(): boolean };

/** The day as far as its first change of depth upward, and from there to the surface. */
function cutShort(day: ToldDay): ToldDay {
  const steps = day.steps.slice(
    0,
    day.steps.findIndex((step) => step.kind === 'go' && step.toM < step.fromM),
  );
  const { toM: fromM } = day.steps[0] as { readonly toM: number };
  return { ...day, steps: [...steps, { kind: 'go', fromM, toM: 0, rateMMin: day.ascentMMin }] };
}

function expectSameWaysUp(plans: () => Schedule[]): void {
  const quick = plans();
  const planner = TissuesUnderWay.prototype as unknown as Shortcuts;
  vi.spyOn(planner, 'settledByEnds').mockReturnValue(undefined);
  vi.spyOn(planner, 'lineMayMove').mockReturnValue(true);
  vi.spyOn(planner, 'staysFree').mockReturnValue(false);
  const close = plans();
  expect(quick.filter(({ stops }) => stops.length > 0).length).toBeGreaterThan(10);
  quick.forEach((plan, i) => {
    const other = close[i]!;
    expect(plan.stops, `plan ${i}`).toEqual(other.stops);
    expect(plan.timeToSurfaceMin).toBeCloseTo(other.timeToSurfaceMin, 9);
    expect(plan.anchorM).toBeCloseTo(other.anchorM, 9);
    expect(plan.onwardAnchorM ?? -1, `plan ${i}`).toBeCloseTo(other.onwardAnchorM ?? -1, 8);
  });
}

type Methods = Record<string, (this: unknown, ...given: unknown[]) => unknown>;

/**
 * What is counted: ways followed closely, looks at a ceiling and at what is over on them, climbs asked about, plans begun,
 * climbs laid out, and what is dear of arithmetic.
 */
const COUNTED: readonly (readonly [of: unknown, method: string])[] = [
  [GasPath.prototype, 'begin'],
  [GasPath.prototype, 'toleratedBar'],
  [GasPath.prototype, 'overBar'],
  [TissuesUnderWay.prototype, 'settledByEnds'],
  [TissuesUnderWay.prototype, 'begin'],
  [WaysUp.prototype, 'climb'],
  [Math, 'exp'],
  [Math, 'expm1'],
  [Math, 'log'],
];

/** How often each of those is called for a task. Vitest's own spies keep all that was given, which takes longer than the task. */
function workOf(task: () => unknown): number[] {
  const counts = COUNTED.map(() => 0);
  const put = COUNTED.map(([of, method], i) => {
    const methods = of as Methods;
    const plain = methods[method]!;
    methods[method] = function (...given) {
      counts[i]! += 1;
      return plain.apply(this, given);
    };
    return () => void (methods[method] = plain);
  });
  try {
    task();
  } finally {
    for (const back of put) back();
  }
  return counts;
}

/** What each task takes, in the order of `COUNTED`. */
const WORK: Readonly<Record<string, Readonly<Record<'plans' | 'figures' | 'changes', readonly number[]>>>> = {
  'two dives on air under 40/85': {
    plans: [225, 5780, 2190, 1701, 215, 66, 3968, 10306, 35],
    figures: [9, 608, 197, 0, 0, 0, 0, 949, 35],
    changes: [2167, 47885, 6517, 5417, 519, 147, 13728, 75250, 0],
  },
  'helium under 30/80 and half oxygen from 21 m': {
    plans: [485, 13522, 4303, 1315, 131, 98, 4792, 77544, 0],
    figures: [74, 2144, 329, 0, 0, 0, 1976, 8058, 0],
    changes: [4652, 116222, 26684, 6756, 799, 615, 11720, 599940, 0],
  },
  'a slow climb up high under 85/85': {
    plans: [14, 448, 73, 1141, 116, 39, 3920, 1186, 17],
    figures: [0, 0, 0, 0, 0, 0, 0, 0, 17],
    changes: [462, 1216, 114, 4758, 586, 425, 12096, 8714, 0],
  },
  'a little helium under 40/90, never a bar of it': {
    plans: [168, 4410, 1211, 916, 149, 72, 5166, 21122, 0],
    figures: [58, 1728, 351, 0, 0, 0, 2126, 6486, 0],
    changes: [1724, 42032, 14187, 3601, 404, 319, 4458, 213930, 0],
  },
  'helium in steps under 20/95': {
    plans: [305, 8284, 2650, 1312, 153, 32, 4290, 37020, 0],
    figures: [44, 1120, 205, 0, 0, 0, 674, 4376, 0],
    changes: [2804, 69932, 28311, 3947, 360, 65, 9508, 362220, 0],
  },
};

describe.each(Object.entries(DAYS))('%s', (name, day) => {
  const begun = engineOf(cutShort(day), EVERY_S);

  it('has the same ways up where each climb is followed closely and each unit of waiting tried', () =>
    expectSameWaysUp(() => plansOf(day)));

  it('takes the work that it took when this was written: other than that, a shortcut was lost, or a new one is due here', () => {
    const { timeline, figures } = engineOf(day, EVERY_S);
    expect({
      plans: workOf(() => plansOf(day)),
      figures: workOf(() => figuresOf(timeline, figures.limits)),
      changes: workOf(() => stopChanges(begun.timeline, begun.figures)),
    }).toEqual(WORK[name]);
  });

  it('has the diver stand at every moment as the change before it tells, though most were not looked at', () => {
    const changes = stopChanges(begun.timeline, begun.figures);
    const standings = standingsAlong(begun.timeline, begun.figures);
    expect(changes.length).toBeGreaterThan(2);
    for (let timeS = 1; timeS < begun.timeline.timeS.at(-1)!; timeS += 5.3) {
      const { state, stopM } = changes.findLast((change) => change.timeS <= timeS)!;
      expect({ timeS, ...standings.at(timeS) }).toEqual({ timeS, state, stopM });
    }
  });
});

it('where gases are taken up between two stops, ways up of several stretches are the same too', () => {
  const { timeline, figures } = engineOf(DAYS['helium under 30/80 and half oxygen from 21 m']!, EVERY_S);
  const carried = [
    { gas: { o2: 0.5, he: 0 }, fromM: 20 },
    { gas: { o2: 1, he: 0 }, fromM: 8 },
  ];
  const between = { ...figures, limits: { ...figures.limits, carried } };
  expectSameWaysUp(() => plansAlong(timeline, between));
});

/** In each compartment helium's limits are milder than nitrogen's as they are published; nothing may rest on that. */
describe.each(Object.entries(DAYS).filter(([, { gas }]) => gas.includes('/')))(
  '%s, with the limits of the two gases changed over',
  (_, day) => {
    const { nitrogenA, nitrogenB, heliumA, heliumB, ...rest } = compartments('C', '1b');
    const changedOver = { ...rest, nitrogenA: heliumA, nitrogenB: heliumB, heliumA: nitrogenA, heliumB: nitrogenB };
    const { timeline, figures } = engineOf(day, EVERY_S, changedOver);

    it('has the same ways up where each climb is followed closely and each unit of waiting tried', () =>
      expectSameWaysUp(() => plansAlong(timeline, figures)));

    it('has the same figures wherever it is sampled', () =>
      expect(differencesBySampling(day, changedOver)).toEqual([]));

    it('needs no stop where it is told without a plan that none is needed', () => {
      const isSurelyFree = surelyFree(timeline, figures.limits);
      const told = plansAlong(timeline, figures).filter((_plan, i) =>
        isSurelyFree(ascentStartAt(timeline, figures, i)),
      );
      expect(told.length).toBeGreaterThan(5);
      expect(told.flatMap(({ stops }) => stops)).toEqual([]);
    });
  },
);

it.each(Object.entries(DAYS).filter(([, { gas }]) => !gas.includes('/')))(
  'without helium nothing is asked of helium’s limits: %s',
  (_, day) => {
    const { dive, timeline, figures } = engineOf(cutShort(day), EVERY_S);
    const { heliumA, heliumB, ...nitrogen } = timeline.compartments;
    const stranger = { ...nitrogen, heliumA: heliumA.map(() => -50), heliumB: heliumB.map(() => 50) };
    const strange = computeTimeline(dive, EVERY_S, { compartments: stranger });
    const tasks = [timeline, strange].map((one) => () => {
      const own = figuresOf(one, figures.limits);
      return [plansAlong(one, own), stopChanges(one, own)];
    });
    expect(tasks[1]!()).toEqual(tasks[0]!());
    expect(workOf(tasks[1]!)).toEqual(workOf(tasks[0]!));
  },
);
