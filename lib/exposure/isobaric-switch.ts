import { breathedAt } from '../ascent/breathed';
import { tissuesAt, type Timeline } from '../dive/timeline';
import { gasName, type Gas } from '../physics/gas';
import { sayDepth } from '../quantity/depth';
import { sayAtDayClock } from '../dive/day-clock';
import { fixed } from '../quantity/number';
import type { UnitSystem } from '../quantity/unit-system';
import { COMPARTMENTS } from '../tissue/coefficients';
import { ambientBarAt } from './gas-depths';
import { totalPeak, type TotalPeak, type TwoGases } from './total-peak';

/** Nitrogen may rise by this part of helium's fall before a switch counts as a jump. Common practice, no source. */
const NITROGEN_JUMP_PART = 1 / 5;

/** A change of gas at one depth that the model has something to say about. */
export interface IsobaricSwitch {
  readonly timeS: number;
  readonly depthM: number;
  readonly from: Gas;
  readonly to: Gas;
  /** How the pressures breathed change, bar; helium's fall is positive. */
  readonly nitrogenRiseBar: number;
  readonly heliumFallBar: number;
  /** Whether nitrogen rises by more than a fifth of helium's fall. */
  readonly nitrogenJumps: boolean;
  /**
   * Compartments (1–16) whose two gases together would rise after the switch while the depth stands still, and not only
   * because they were filling anyway: on the gas before they would not have risen, or they come to more than either gas
   * presses, which no filling does. The largest rise first.
   */
  readonly rising: readonly (TotalPeak & { readonly compartment: number })[];
}

/** What can honestly be said of such a switch. */
export const ISOBARIC_CAUTION =
  'The model counts dissolved gas and nothing else. It hints at trouble some divers have had after such switches, mostly of the inner ear; it can’t tell whether it will come, and a switch it says nothing about isn’t shown to be safe.';

/** Smaller rises than this don't show in two decimals, bar. */
const NO_RISE_BAR = 0.005;

/**
 * The switches of a dive at which the gas in the tissues would go up without going deeper, or nitrogen takes helium's
 * place in a jump. A switch between two dives is none.
 */
export function isobaricSwitches(timeline: Timeline): IsobaricSwitch[] {
  const { legs, gases } = timeline;
  return legs.flatMap((leg, index): IsobaricSwitch[] => {
    const before = legs[index - 1];
    if (!before || before.gas === leg.gas || before.interval || leg.interval) return [];
    const [from, to] = [gases[before.gas]!, gases[leg.gas]!];
    const ambientBar = ambientBarAt(leg.fromM, timeline);
    const [old, fresh] = [breathedAt(timeline, from, ambientBar), breathedAt(timeline, to, ambientBar)];
    const nitrogenRiseBar = fresh.nitrogenBar - old.nitrogenBar;
    const heliumFallBar = old.heliumBar - fresh.heliumBar;
    const nitrogenJumps = heliumFallBar > 0 && nitrogenRiseBar > heliumFallBar * NITROGEN_JUMP_PART;
    const tissues = tissuesAt(timeline, timeline.leg.indexOf(index));
    const pressedBar = Math.max(together(old), together(fresh));
    const rising = Array.from({ length: COMPARTMENTS }, (_, c) => {
      const { nitrogenK, heliumK } = timeline.compartments;
      const start = { nitrogenBar: tissues.nitrogenBar[c]!, heliumBar: tissues.heliumBar[c]! };
      const k = { nitrogen: nitrogenK[c]!, helium: heliumK[c]! };
      const peak = totalPeak(start, fresh, k);
      const anyway =
        totalPeak(start, old, k).riseBar > NO_RISE_BAR && together(start) + peak.riseBar <= pressedBar + NO_RISE_BAR;
      return { ...peak, compartment: c + 1, anyway };
    })
      .filter(({ riseBar, anyway }) => riseBar > NO_RISE_BAR && !anyway)
      .map(({ compartment, riseBar, afterMin }) => ({ compartment, riseBar, afterMin }))
      .sort((one, other) => other.riseBar - one.riseBar);
    if (!nitrogenJumps && rising.length === 0) return [];
    return [{ timeS: leg.startS, depthM: leg.fromM, from, to, nitrogenRiseBar, heliumFallBar, nitrogenJumps, rising }];
  });
}

function together({ nitrogenBar, heliumBar }: TwoGases): number {
  return nitrogenBar + heliumBar;
}

/** A switch in a sentence or two, by the clock of its dive in the day; `ISOBARIC_CAUTION` belongs beside it. */
export function sayIsobaricSwitch(found: IsobaricSwitch, day: Pick<Timeline, 'legs'>, system: UnitSystem): string {
  const { timeS, depthM, from, to, nitrogenRiseBar, heliumFallBar, nitrogenJumps, rising } = found;
  const opening = `${sayAtDayClock(day, timeS)} you go from ${gasName(from)} to ${gasName(to)} at ${sayDepth(depthM, system)}.`;
  const jump = nitrogenJumps
    ? ` The nitrogen you breathe rises by ${fixed(nitrogenRiseBar, 2)} bar while helium falls by ${fixed(heliumFallBar, 2)} bar: more than the fifth that is commonly allowed.`
    : '';
  const [most] = rising;
  if (!most) return `${opening}${jump}`;
  const when = Number.isFinite(most.afterMin) ? `within ${fixed(most.afterMin, 0)} min` : 'in the end';
  return `${opening}${jump} At this depth, compartment ${most.compartment} would go on to hold ${fixed(most.riseBar, 2)} bar more of the two gases together ${when}, without going deeper.`;
}
