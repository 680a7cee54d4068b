import { describe, expect, it } from 'vitest';
import { goalState } from '@/lib/lesson/questions/goal';
import { THIRTY, worldFor } from '../made-lessons';

const GOAL = 'maxDepthM >= 30 and requiredStopMin == 0 and bottomMin >= 12';

function missing(script: string, goal = GOAL, system: 'metric' | 'imperial' = 'metric'): string[] {
  return goalState(goal, worldFor(script), system)
    .clauses.filter(({ met }) => !met)
    .map(({ text }) => text);
}

describe('a goal on the learner’s own dive', () => {
  it('says of each part that is not met what is so and what is wanted', () => {
    const shallow = THIRTY.replace('30 m', '24 m').replace('stay 20 min', 'stay 5 min');
    expect(missing(shallow)).toEqual([
      'Greatest depth: 24 m, asked at least 30 m.',
      'Bottom time: 6 min, asked at least 12 min.',
    ]);
    expect(missing(THIRTY)).toEqual(['Time at required stops: 4 min, asked none.']);
  });

  it('speaks in the reader’s units', () => {
    expect(missing(THIRTY.replace('30 m', '24 m'), 'maxDepthM >= 30', 'imperial')).toEqual([
      'Greatest depth: 79 ft, asked at least 98 ft.',
    ]);
  });

  it('is met when all its parts are', () => {
    const state = goalState(GOAL, worldFor(THIRTY.replace('stay 20 min', 'stay 10 min 30 s')), 'metric');
    expect(state.met).toBe(true);
    expect(state.clauses).toHaveLength(3);
  });

  it('shows the difference that decides where rounding would hide it', () => {
    expect(missing(THIRTY, 'bottomMin >= 21.7 min')).toEqual(['Bottom time: 21:40, asked at least 21:42.']);
  });

  it('counts the rounding of seconds as nothing', () => {
    expect(missing(THIRTY.replace('stay 20 min', 'stay 10 min 20 s'), 'bottomMin >= 12')).toEqual([]);
  });

  it('says what a choice of ways asks for', () => {
    expect(missing(THIRTY, 'maxDepthM > 40 or bottomMin > 60')).toEqual([
      'One of these has to be so: greatest depth: 30 m, asked more than 40 m; or bottom time: 22 min, asked more than 60 min.',
    ]);
  });

  it('is never met by an expression that makes no sense, and says why', () => {
    expect(goalState('maxDepth > 3', worldFor(THIRTY), 'metric')).toMatchObject({
      met: false,
      clauses: [{ text: '“maxDepth” is not a fact that is known here.' }],
    });
  });
});
