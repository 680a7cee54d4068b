import { expect, it } from 'vitest';
import { figuresOf } from '@/lib/ascent/figures';
import { standingsAlong } from '@/lib/ascent/standings';
import { computeTimeline } from '@/lib/dive/timeline';
import { diveOf } from '../read';

it('a standing is not told to stay where a ceiling comes about, though no stop does; where none does, it is', () => {
  const dive = diveOf(
    'gas: air\ngradient factors: 85/85\ndescend to 30 m at 18 m/min\nstay 11 min\nascend to surface at 3 m/min',
  );
  const timeline = computeTimeline(dive, 10);
  const { at, staysBetween } = standingsAlong(timeline, figuresOf(timeline, dive.settings));
  const { startS, endS } = timeline.legs[2]!;
  const free = { state: 'free', stopM: 0 } as const;
  expect([startS + 20, startS + 40, endS - 60].map(at)).toEqual([free, { state: 'clearing', stopM: 0 }, free]);
  expect(staysBetween(startS + 20, startS + 40, free)).toBe(false);
  expect(staysBetween(endS - 60, endS - 20, free)).toBe(true);
});
