import { expect, it } from 'vitest';
import { defaultSettings } from '@/lib/dive/default-settings';
import type { Settings } from '@/lib/dive/dive';
import { startingTissues } from '@/lib/dive/start';
import { atmosphereBar } from '@/lib/physics/atmosphere';
import { compartments } from '@/lib/tissue/coefficients';

const startOf = (settings: Partial<Settings>) =>
  startingTissues({ ...defaultSettings(), ...settings }, compartments('C', '1b'));
const settledAtBar = (altitudeM: number) => (atmosphereBar(altitudeM) - 0.0627) * 0.79;

it('who is adapted to an altitude holds what air gives there, wherever the dive is', () => {
  const { nitrogenBar, heliumBar } = startOf({ altitudeM: 1500, start: { kind: 'adapted', altitudeM: 2000 } });
  for (const bar of nitrogenBar) expect(bar).toBeCloseTo(settledAtBar(2000), 12);
  expect([...heliumBar]).toEqual(Array(16).fill(0));
});

it('who arrived from the sea a half-time ago is half way to being settled, compartment by compartment', () => {
  const { nitrogenHalfTimeMin } = compartments('C', '1b');
  for (const c of [0, 7, 15]) {
    const agoS = nitrogenHalfTimeMin[c]! * 60;
    const { nitrogenBar } = startOf({ altitudeM: 2000, start: { kind: 'arrived', fromM: 0, agoS } });
    expect(nitrogenBar[c]).toBeCloseTo((settledAtBar(0) + settledAtBar(2000)) / 2, 12);
  }
});

it('tensions brought along are taken as they are, as copies', () => {
  const nitrogenBar = Array.from({ length: 16 }, (_, c) => 0.7 + c / 100);
  const heliumBar = Array.from({ length: 16 }, (_, c) => c / 50);
  const start = startOf({ start: { kind: 'tensions', nitrogenBar, heliumBar } });
  expect([...start.nitrogenBar]).toEqual(nitrogenBar);
  expect([...start.heliumBar]).toEqual(heliumBar);
});
