import { expect, it } from 'vitest';
import { defaultSettings } from '@/lib/dive/default-settings';
import type { Step } from '@/lib/dive/dive';
import { computeTimeline } from '@/lib/dive/timeline';
import { along, placeAt, settled, type Way } from '../../laws/second-model/second-model';

const TRIMIX = { o2: 0.18, he: 0.45 };
const HALF = { o2: 0.5, he: 0 };
const AIR = { o2: 0.21, he: 0 };
const place = placeAt(0);

const way = (fromM: number, toM: number, minutes: number, gas = TRIMIX): Way => ({ fromM, toM, minutes, ...gas });
const MIXED = [way(0, 45, 3), way(45, 45, 10), way(45, 21, 4), way(21, 21, 5, HALF), way(21, 0, 7, HALF)];
const PLAIN = [way(0, 30, 2, AIR), way(30, 30, 20, AIR), way(30, 5, 3, AIR), way(5, 5, 8, AIR), way(5, 0, 1, AIR)];

function stepsOf(ways: readonly Way[]): Step[] {
  return ways.flatMap(({ fromM, toM, minutes, o2, he }): Step[] => [
    { kind: 'switch', gas: { o2, he } },
    toM === fromM
      ? { kind: 'stay', durationS: minutes * 60 }
      : { kind: toM > fromM ? 'descend' : 'ascend', toM, durationS: minutes * 60 },
  ]);
}

// Schreiner's equation as it is printed, with the published half-times (content/published/zhl16.json).
it.each([
  ['nitrogen alone', PLAIN],
  ['nitrogen and helium', MIXED],
])('all sixteen compartments hold, of %s, what the second model says at every sample', (_, ways) => {
  const settings = { ...defaultSettings(), gas: { o2: ways[0]!.o2, he: ways[0]!.he } };
  const timeline = computeTimeline({ settings, steps: stepsOf(ways), lines: [] }, 30);
  const second = [...along(place, settled(place), { low: 0.85, high: 0.85 }, ways, 30)];
  expect(timeline.length).toBe(second.length + 1);
  second.forEach(({ diver, minutes }, index) => {
    expect(timeline.timeS[index + 1]).toBeCloseTo(minutes * 60, 6);
    for (let c = 0; c < 16; c += 1) {
      expect(timeline.nitrogenBar[(index + 1) * 16 + c]).toBeCloseTo(diver.nitrogenBar[c]!, 9);
      expect(timeline.heliumBar[(index + 1) * 16 + c]).toBeCloseTo(diver.heliumBar[c]!, 9);
    }
  });
});
