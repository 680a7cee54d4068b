import { describe, expect, it } from 'vitest';
import { figuresAt, figuresOf } from '@/lib/ascent/figures';
import { ascentRateCurve } from '@/lib/curves/ascent-rate-curve';
import { bottomOf, diveOfBottom, type BottomPhase } from '@/lib/curves/bottom-phase';
import { computeTimeline } from '@/lib/dive/timeline';
import { settingsWith } from './scripted';

const phase: BottomPhase = { settings: settingsWith(), depthM: 36, minutes: 20, descentMMin: 18 };

describe('a bottom phase as a dive', () => {
  it('ends with the tissues the curves begin their ascents with', () => {
    const timeline = computeTimeline(diveOfBottom(phase), 1e9);
    const { end } = bottomOf(phase);
    const last = timeline.length - 1;
    for (let c = 0; c < 16; c++) expect(timeline.nitrogenBar[last * 16 + c]).toBeCloseTo(end.nitrogenBar[c]!, 9);
  });

  it.each([3, 9, 30])('surfaces and plans as the curve says at %d m/min', (rateMMin) => {
    const { site, end } = bottomOf(phase);
    const [curve] = ascentRateCurve(phase.settings, site, end, [rateMMin]);
    const dive = diveOfBottom(phase, rateMMin);
    const up = computeTimeline(dive, 1e9);
    const figures = figuresOf(up, dive.settings);
    expect(figuresAt(up, figures, up.length - 1).surfacingSupersaturation.value).toBeCloseTo(
      curve!.direct.surfacingSupersaturation,
      9,
    );
    const planned = {
      ...phase,
      settings: { ...phase.settings, plan: { ...phase.settings.plan, ascentMMin: rateMMin } },
    };
    const bottom = computeTimeline(diveOfBottom(planned), 1e9);
    expect(
      figuresAt(bottom, figuresOf(bottom, planned.settings), bottom.length - 1).schedule.timeToSurfaceMin,
    ).toBeCloseTo(curve!.required.timeToSurfaceMin, 9);
  });
});
