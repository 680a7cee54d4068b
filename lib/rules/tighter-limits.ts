import { printPercent } from '../quantity/percent';
import type { GradientFactors } from '../dive/dive';
import { eventKind } from './event';
import { rule } from './rule';
import { amount, count, onOff, type ValuesOf } from './settings/setting';

const settings = {
  on: onOff(false),
  /** Each breach takes this off the high gradient factor. */
  by: amount(0.1, 0.01, 0.5),
  /** It is not taken lower than this. */
  floor: amount(0.5, 0.1, 1),
  /** Breaches beyond so many change nothing more. */
  mostTimes: count(3, 1, 9),
};
type Settings = ValuesOf<typeof settings>;

const tightened = eventKind({
  kind: 'limits-tightened',
  rule: 'tighterLimits',
  meaning: 'After a breach of the rate limit the unit goes by a lower gradient factor for this dive and the next.',
  say: ({ high }: { high: number; times: number }) =>
    `the unit draws its limits in after that rise: it goes by a high gradient factor of ${printPercent(high)} for the rest of this dive and the next.`,
});
const restored = eventKind({
  kind: 'limits-restored',
  rule: 'tighterLimits',
  meaning: 'A dive has passed without a breach; the unit goes by its own limits again.',
  say: ({ high }: { high: number }) =>
    `the unit goes by its own limits again, a high gradient factor of ${printPercent(high)}.`,
});

/** A fast rise is answered with stricter limits for the rest of the dive and the next one. */
export const tighterLimits = rule({
  id: 'tighterLimits',
  title: 'Tighter limits after a fast rise',
  reason:
    'The unit takes the body for less able to get rid of gas after a fast rise and keeps you further from the limit for a while. By how much and for how long nobody knows: the figures are ours.',
  standing: 'illustrative',
  settings,
  events: [tightened, restored],
  begin: () => ({ earlier: 0, earned: 0 }),
  step(state, now, own, unit) {
    if (now.diveStarts) {
      const before = unit.tightness;
      state.earlier = state.earned;
      state.earned = 0;
      unit.tightness = Math.min(state.earlier, own.mostTimes);
      if (before > 0 && unit.tightness === 0)
        unit.tell(restored, now.timeS, { high: unit.figures.limits.gradientFactors.high });
    }
    if (unit.breach === 0) return;
    state.earned += 1;
    const times = Math.min(state.earlier + state.earned, own.mostTimes);
    if (times === unit.tightness) return;
    unit.tightness = times;
    unit.tell(tightened, now.timeS, { high: unit.figures.limits.gradientFactors.high, times });
  },
});

/**
 * The limits drawn in so many times. Only `high` is lowered, and `low` kept from being above it: lowering `low` as well
 * would move the first stop deeper and with it raise the line between, so that some stops came out shorter.
 */
export function tightenedFactors(
  { low, high }: GradientFactors,
  own: Pick<Settings, 'by' | 'floor'>,
  times: number,
): GradientFactors {
  const lowered = Math.min(high, Math.max(own.floor, Math.round((high - own.by * times) * 1e9) / 1e9));
  return { low: Math.min(low, lowered), high: lowered };
}
