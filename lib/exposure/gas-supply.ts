import type { Settings } from '../dive/dive';
import type { Cylinder } from '../dive/supply';
import type { Timeline } from '../dive/timeline';
import { breathingRatesOf, gasBreathedL, type BreathingRates } from './consumption';
import { ambientBarAt } from './gas-depths';
import { absoluteOfGauge, gaugeOfAbsolute, IDEAL_GAS, REAL_GAS, type GasLaw } from './gas-law';
import { gasSpells, type Spells } from './gas-spells';
import { supplyEvents, type SupplyEvent } from './supply-events';

/** One cylinder at every sample of a timeline, under one gas law. */
interface CylinderTrack {
  readonly cylinder: Cylinder;
  /** What its gauge shows, bar; full again at the start of each dive. */
  readonly pressureBar: Float64Array;
  /** Gas breathed from it since the script began, litres at 1 bar; it never falls. */
  readonly usedL: Float64Array;
}

export interface SupplyUnderLaw extends Spells {
  readonly law: GasLaw['name'];
  /** One for each cylinder of the settings, in their order. */
  readonly cylinders: readonly CylinderTrack[];
  /** Gas breathed while no cylinder held it, litres at 1 bar, by sample. */
  readonly unsuppliedL: Float64Array;
}

/** The same supply under both gas laws, side by side, and what happens to it. */
export interface GasSupply {
  readonly ideal: SupplyUnderLaw;
  readonly real: SupplyUnderLaw;
  readonly events: readonly SupplyEvent[];
}

/** Works out the cylinders of a dive's settings over its timeline; nothing when the settings list none. */
export function gasSupplyOf(timeline: Timeline, settings: Pick<Settings, 'supply'>): GasSupply | undefined {
  const cylinders = settings.supply?.cylinders ?? [];
  if (cylinders.length === 0) return undefined;
  const rates = breathingRatesOf(settings);
  const ideal = supplyUnder(IDEAL_GAS, timeline, cylinders, rates);
  const real = supplyUnder(REAL_GAS, timeline, cylinders, rates);
  return { ideal, real, events: supplyEvents(timeline, cylinders, ideal, real) };
}

function supplyUnder(
  law: GasLaw,
  timeline: Timeline,
  cylinders: readonly Cylinder[],
  rates: BreathingRates,
): SupplyUnderLaw {
  const { length, timeS, legs, leg } = timeline;
  const { spells, runOuts } = gasSpells(timeline, cylinders, law, rates);
  const tracks = cylinders.map((cylinder) => ({
    cylinder,
    pressureBar: new Float64Array(length),
    usedL: new Float64Array(length),
  }));
  const unsuppliedL = new Float64Array(length);
  /** Used since the script began, and before the dive under way, by cylinder; the last is none. */
  const used = new Float64Array(cylinders.length + 1);
  const usedBefore = new Float64Array(cylinders.length + 1);
  let spell = 0;
  let dive = 0;
  for (let i = 0; i < length; i += 1) {
    while (spell < spells.length - 1 && (spells[spell]!.leg < leg[i]! || spells[spell]!.endS < timeS[i]!)) {
      const { cylinder, endS } = spells[spell]!;
      used[slotOf(cylinder)]! += usedIn(spell, endS);
      spell += 1;
    }
    if (legs[leg[i]!]!.diveNumber !== dive) {
      dive = legs[leg[i]!]!.diveNumber;
      usedBefore.set(used);
    }
    const { cylinder } = spells[spell]!;
    const now = usedIn(spell, timeS[i]!);
    tracks.forEach((track, index) => {
      const total = used[index]! + (index === cylinder ? now : 0);
      track.usedL[i] = total;
      if (i > 0 && total === track.usedL[i - 1] && legs[leg[i - 1]!]!.diveNumber === dive) {
        track.pressureBar[i] = track.pressureBar[i - 1]!;
        return;
      }
      const { startBar } = track.cylinder;
      const contentL = law.contentL(track.cylinder, absoluteOfGauge(startBar)) - (total - usedBefore[index]!);
      track.pressureBar[i] = gaugeOfAbsolute(law.absoluteBar(track.cylinder, contentL));
    });
    unsuppliedL[i] = used[cylinders.length]! + (cylinder < 0 ? now : 0);
  }
  return { law: law.name, spells, runOuts, cylinders: tracks, unsuppliedL };

  function slotOf(cylinder: number): number {
    return cylinder < 0 ? cylinders.length : cylinder;
  }

  function usedIn(index: number, untilS: number): number {
    const { startS, endS, rateLMin, leg: legIndex } = spells[index]!;
    const toS = Math.min(untilS, endS);
    return gasBreathedL(rateLMin, ambientAt(legIndex, startS), ambientAt(legIndex, toS), (toS - startS) / 60);
  }

  function ambientAt(legIndex: number, momentS: number): number {
    const { fromM, toM, startS, endS } = legs[legIndex]!;
    const part = endS > startS ? (momentS - startS) / (endS - startS) : 0;
    return ambientBarAt(fromM + (toM - fromM) * part, timeline);
  }
}
