import { figuresOf } from '@/lib/ascent/figures';
import { computeTimeline, sampleAt } from '@/lib/dive/timeline';
import type { Compartments } from '@/lib/tissue/coefficients';
import { scriptOf, type ToldDay } from '../../laws/second-model/told-day';
import { diveOf } from '../read';

/* Days that between them go every way the engine has. */

const go = (fromM: number, toM: number, rateMMin: number) => ({ kind: 'go', fromM, toM, rateMMin }) as const;
const stay = (minutes: number) => ({ kind: 'stay', minutes }) as const;
const interval = (minutes: number) => ({ kind: 'interval', minutes }) as const;
const onto50 = { kind: 'switch', gas: '50%' } as const;

const PLAIN = { water: 'reference', altitudeM: 0, carries50From21: false, lastStopM: 3, ascentMMin: 9 } as const;

export const DAYS: Readonly<Record<string, ToldDay>> = {
  'two dives on air under 40/85': {
    ...PLAIN,
    low: 40,
    high: 85,
    gas: 'air',
    steps: [
      go(0, 45, 18),
      stay(20),
      go(45, 12, 9),
      stay(6),
      go(12, 24, 9),
      stay(5),
      go(24, 4, 9),
      stay(25),
      go(4, 0, 6),
      interval(25),
      go(0, 30, 18),
      stay(12),
      go(30, 0, 18),
      interval(30),
    ],
  },
  'helium under 30/80 and half oxygen from 21 m': {
    ...PLAIN,
    water: 'sea',
    low: 30,
    high: 80,
    gas: '18/45',
    carries50From21: true,
    lastStopM: 6,
    ascentMMin: 6,
    steps: [
      go(0, 50, 18),
      stay(18),
      go(50, 20, 9),
      onto50,
      stay(6),
      go(20, 9, 3),
      stay(12),
      go(9, 0, 6),
      interval(20),
      go(0, 25, 18),
      stay(10),
      go(25, 0, 9),
    ],
  },
  'a slow climb up high under 85/85': {
    ...PLAIN,
    water: 'fresh',
    altitudeM: 2000,
    low: 85,
    high: 85,
    gas: '32%',
    ascentMMin: 3,
    steps: [
      go(0, 36, 18),
      stay(20),
      go(36, 12, 3),
      stay(15),
      go(12, 24, 6),
      stay(10),
      go(24, 3, 3),
      stay(8),
      go(3, 0, 3),
    ],
  },
  'a little helium under 40/90, never a bar of it': {
    ...PLAIN,
    water: 'fresh',
    altitudeM: 500,
    low: 40,
    high: 90,
    gas: '21/5',
    steps: [
      go(0, 40, 18),
      stay(16),
      go(40, 9, 9),
      stay(5),
      go(9, 21, 9),
      stay(6),
      go(21, 3, 9),
      stay(12),
      go(3, 0, 3),
      interval(30),
      go(0, 20, 18),
      stay(10),
      go(20, 0, 9),
    ],
  },
  'helium in steps under 20/95': {
    ...PLAIN,
    low: 20,
    high: 95,
    gas: '21/35',
    ascentMMin: 18,
    steps: [
      go(0, 42, 18),
      stay(14),
      go(42, 12, 6),
      stay(8),
      go(12, 36, 18),
      stay(9),
      go(36, 6, 9),
      stay(14),
      go(6, 0, 9),
      interval(40),
    ],
  },
};

/** What the engine makes of a day, sampled every so many seconds; with other half-times and limits if told. */
export function engineOf(day: ToldDay, everyS: number, compartments?: Compartments) {
  const dive = diveOf(scriptOf(day));
  const timeline = computeTimeline(dive, everyS, { compartments });
  return { dive, timeline, figures: figuresOf(timeline, dive.settings) };
}

/** Where the figures of a day differ from themselves as it is sampled: coarsely, so that much happens in between, and finely. */
export function differencesBySampling(day: ToldDay, compartments?: Compartments): string[] {
  const coarse = engineOf(day, 7200, compartments);
  const fine = engineOf(day, 5, compartments);
  return Array.from(coarse.timeline.timeS).flatMap((timeS, i) => {
    const other = sampleAt(fine.timeline, timeS);
    return FIGURES.flatMap((figure) => {
      const [one, two] = [coarse.figures[figure][i]!, fine.figures[figure][other]!];
      return one === two || Math.abs(one - two) < 1e-8 ? [] : [`${figure} at ${timeS} s: ${one} and ${two}`];
    });
  });
}

const FIGURES = ['ceilingM', 'ceilingAtLowM', 'anchorM', 'noStopMin', 'ceilingLeader', 'noStopLeader'] as const;
