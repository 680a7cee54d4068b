import { describe, expect, it } from 'vitest';
import { figuresOf } from '@/lib/ascent/figures';
import { computeTimeline, sampleAt } from '@/lib/dive/timeline';
import { compareGases } from '@/lib/exposure/gas-comparison';
import { AIR } from '@/lib/physics/gas';
import { scripted } from './scripted';

const NITROX = { o2: 0.32, he: 0 };
const TRIMIX = { o2: 0.21, he: 0.35 };
const { settings } = scripted('gradient factors: 85/85');
const [air, nitrox, trimix] = compareGases([AIR, NITROX, TRIMIX], 30, settings);

describe('gases beside each other at a depth', () => {
  it('show what oxygen buys in no-stop time and costs in depth, exposure and density', () => {
    expect(nitrox!.noStopMin).toBeGreaterThan(air!.noStopMin);
    expect(nitrox!.workingModM).toBeLessThan(air!.workingModM);
    expect(nitrox!.singleLimitMin).toBeLessThan(air!.singleLimitMin);
    expect(nitrox!.densityGL).toBeGreaterThan(air!.densityGL);
  });

  it('show what helium buys in narcosis and density and costs in no-stop time', () => {
    expect(trimix!.equivalentNarcoticDepthM).toBeLessThan(air!.equivalentNarcoticDepthM);
    expect(trimix!.densityGL).toBeLessThan(air!.densityGL);
    expect(trimix!.noStopMin).toBeLessThan(air!.noStopMin);
    expect(trimix!.equivalentAirDepthM).toBeNull();
  });

  it('count narcosis as set', () => {
    expect(nitrox!.equivalentNarcoticDepthM).toBe(30);
    expect(compareGases([NITROX], 30, settings, 'nitrogen')[0]!.equivalentNarcoticDepthM).toBe(
      nitrox!.equivalentAirDepthM,
    );
  });

  it('have the no-stop time the engine shows a diver who got there at once', () => {
    const dive = scripted('descend to 30 m at 200 m/min', 'stay 1 min', 'ascend to surface at 9 m/min');
    const timeline = computeTimeline(dive, 1);
    const at = sampleAt(timeline, 9);
    // The descent takes 9 s, which loads less than the same time at 30 m.
    expect(Math.abs(figuresOf(timeline, dive.settings).noStopMin[at]! - air!.noStopMin)).toBeLessThan(9 / 60);
  });
});
