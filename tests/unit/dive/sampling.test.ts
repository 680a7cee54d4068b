import { describe, expect, it } from 'vitest';
import { legsOf } from '@/lib/dive/legs';
import { isMultiple, sampleInstants } from '@/lib/dive/sample-instants';
import { samplingOf } from '@/lib/dive/sampling';
import { computeTimeline, sampleFromS } from '@/lib/dive/timeline';
import { diveOf, down, rest, stay, up } from '../rules/made-dives';

describe('how finely a dive is sampled', () => {
  it('is each second up to four hours under water, whatever lies between the dives', () => {
    expect(samplingOf(diveOf([stay(4 * 3600), rest(90_000)]), 60)).toEqual({ everyS: 1, intervalEveryS: 60 });
    expect(samplingOf(diveOf([]), 60).everyS).toBe(1);
  });

  it('is every other second from there to eight, and intervals never more finely than that', () => {
    const long = diveOf([stay(4 * 3600), { kind: 'switch', gas: { o2: 0.5, he: 0 } }, stay(1)]);
    expect(samplingOf(long, 1)).toEqual({ everyS: 2, intervalEveryS: 2 });
    expect(samplingOf(diveOf([stay(8 * 3600)]), 1).everyS).toBe(2);
    expect(samplingOf(diveOf([stay(8 * 3600 + 1)]), 1).everyS).toBe(3);
  });
});

describe('samples at the multiples of other steps too', () => {
  const { legs, endS } = legsOf(diveOf([down(10, 25), stay(20)]));
  const of = (everyS: number, alsoEveryS: number[]) =>
    sampleInstants(legs, endS, everyS, everyS, undefined, alsoEveryS);

  it('lie in order, each once, and belong to the leg they fall into', () => {
    const { timeS, leg, firstOfLeg } = of(10, [4, 6]);
    expect([...timeS]).toEqual([0, 4, 6, 8, 10, 12, 16, 18, 20, 24, 25, 28, 30, 32, 36, 40, 42, 44, 45]);
    expect([...leg]).toEqual([...Array(10).fill(0), ...Array(9).fill(1)]);
    expect(firstOfLeg).toEqual([0, 10, 18]);
  });

  it('are none besides where they are multiples of the first', () => {
    expect([...of(5, [10]).timeS]).toEqual([...of(5, []).timeS]);
  });
});

describe('a time', () => {
  it('is a multiple of a step but for rounding', () => {
    expect(isMultiple(0.1 * 3, 0.1)).toBe(true);
    expect(isMultiple(119.999999999, 60)).toBe(true);
    expect(isMultiple(119.9999, 60)).toBe(false);
    expect(isMultiple(90, 60)).toBe(false);
  });

  it('has a first sample at or after it, or none', () => {
    const timeline = computeTimeline(diveOf([down(10, 25), up(0, 60)]), 20);
    expect(sampleFromS(timeline, 20)).toBe(20);
    expect(sampleFromS(timeline, 20.1)).toBe(25);
    expect(sampleFromS(timeline, 100)).toBe(100);
  });
});
