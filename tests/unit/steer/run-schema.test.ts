import { expect, it } from 'vitest';
import { FRESH_RUN, steered } from '@/lib/steer/run';
import { steerRunSchema } from '@/lib/steer/run-schema';

it('a run is kept and read as it is, and what is none is refused', () => {
  const run = steered(steered(FRESH_RUN, 18, 60.4, 0.1), 0, 30, 0.1);
  expect(steerRunSchema.parse(JSON.parse(JSON.stringify(run)))).toEqual(run);
  for (const spoilt of [
    {},
    { timesS: [0, 10], depthsM: [0] },
    { timesS: [0, 10, 10], depthsM: [0, 3, 3] },
    { timesS: [5, 10], depthsM: [0, 3] },
    { timesS: [0, 10], depthsM: [0, -3] },
    { timesS: [0, 10], depthsM: [0, 1e6] },
    { timesS: [0, null], depthsM: [0, 3] },
  ])
    expect(steerRunSchema.safeParse(spoilt).success).toBe(false);
});
