import { expect, it } from 'vitest';
import { stopChanges } from '@/lib/ascent/stop-changes';
import { parseScript } from '@/lib/dive/script';
import { sceneOf } from '@/app/pictures/scene';

it('tells a first stop that stands for less than a second', () => {
  // Three times as fast as the plan: just below 3 m the climb to 3 m is no longer open and the stop below is asked for;
  // from 3 m on it is 3 m again.
  const parsed = parseScript(`model: ZH-L16A
first compartment: 1
gradient factors: 52.00697916524878/71.83420082602454
plan ascent: 3 m/min
gas: 32%

descend to 7.669464332161444 m in 31.12009451387044 s
stay 1373.9549887911082 s
switch to air
descend to 30 m in 265.52511372728543 s
stay 10 min
ascend to surface at 9 m/min
`);
  if (!parsed.ok) throw new Error(parsed.errors[0]!.message);
  const { timeline, figures } = sceneOf(parsed.dive);
  const changes = stopChanges(timeline, figures);
  const spell = changes.findIndex(({ stopM }, i) => stopM === 6 && changes[i + 1]?.stopM === 3);
  expect(spell).toBeGreaterThan(0);
  expect(changes[spell + 1]!.timeS - changes[spell]!.timeS).toBeLessThan(1);
});
