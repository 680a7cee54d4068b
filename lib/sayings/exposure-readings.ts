import { gasAt, type Timeline } from '../dive/timeline';
import { densityBand } from '../exposure/gas-density';
import type { GasSupply } from '../exposure/gas-supply';
import type { OxygenExposure } from '../exposure/oxygen-exposure';
import { gasName, sameGas } from '../physics/gas';
import { LEAST_PO2_BAR, RESTING_PO2_BAR, WORKING_PO2_BAR } from '../physics/oxygen-limits';
import type { UnitSystem } from '../quantity/unit-system';
import { printAs } from './measures';
import { sayAll, type Reading, type Saying } from './saying';

/** What is breathed at one sample of a timeline. */
export interface ExposureMoment {
  readonly timeline: Timeline;
  readonly sample: number;
  readonly oxygen: OxygenExposure;
  /** g/L, one a sample. */
  readonly densitiesGL: Float64Array;
  /** Undefined where the settings list no cylinders. */
  readonly supply: GasSupply | undefined;
}

const overLimit = (share: number) => (share > 1 ? 'rule' : 'plain');
const pO2BarOf = ({ oxygen, sample }: ExposureMoment) => oxygen.pO2Bar[sample]!;
const densityOf = ({ densitiesGL, sample }: ExposureMoment) => densitiesGL[sample]!;

/** Oxygen, density and the cylinder in use: one line a reading. */
const EXPOSURE_READINGS = {
  'oxygen-pressure': {
    measure: 'oxygenBar',
    figure: pO2BarOf,
    note: (moment) => oxygenNote(pO2BarOf(moment)),
    tone: (moment) => (pO2BarOf(moment) > WORKING_PO2_BAR || pO2BarOf(moment) < LEAST_PO2_BAR ? 'rule' : 'plain'),
  },
  'oxygen-single': {
    measure: 'oxygenShare',
    name: 'Single exposure',
    figure: ({ oxygen, sample }) => oxygen.singleFraction[sample]!,
    note: () => 'of the limit for one exposure',
    tone: ({ oxygen, sample }) => overLimit(oxygen.singleFraction[sample]!),
  },
  'oxygen-daily': {
    measure: 'oxygenShare',
    name: 'Oxygen in 24 h',
    figure: ({ oxygen, sample }) => oxygen.dailyFraction[sample]!,
    note: () => 'of the limit for a day',
    tone: ({ oxygen, sample }) => overLimit(oxygen.dailyFraction[sample]!),
  },
  'oxygen-pulmonary': {
    measure: 'lungUnits',
    figure: ({ oxygen, sample }) => oxygen.pulmonaryUnits[sample]!,
    note: () => 'since the start; they do not fade',
  },
  'gas-density': {
    measure: 'densityGL',
    figure: densityOf,
    note: (moment) => densityBand(densityOf(moment)),
    tone: (moment) => (densityBand(densityOf(moment)) === 'within what is recommended' ? 'plain' : 'rule'),
  },
  cylinder: {
    measure: 'cylinderBar',
    figure: (moment) => cylinderInUse(moment)?.realBar ?? null,
    note: (moment, system) => {
      const inUse = cylinderInUse(moment);
      return inUse
        ? `“${inUse.name}”, ${inUse.gas}; as an ideal gas ${printAs('cylinderBar', inUse.idealBar, system)}`
        : '';
    },
  },
} as const satisfies Readonly<Record<string, Reading<ExposureMoment>>>;

export type ExposureReadingId = keyof typeof EXPOSURE_READINGS;

/** What is breathed at an instant, by reading; the cylinder is `not shown` where none is listed. */
export function exposureSayings(
  moment: ExposureMoment,
  system: UnitSystem,
): Readonly<Record<ExposureReadingId, Saying>> {
  return sayAll<ExposureReadingId, ExposureMoment>(EXPOSURE_READINGS, moment, system);
}

function oxygenNote(pO2Bar: number): string {
  if (pO2Bar > RESTING_PO2_BAR) return `over ${RESTING_PO2_BAR}, taught as the limit at rest`;
  if (pO2Bar > WORKING_PO2_BAR) return `over ${WORKING_PO2_BAR}, taught as the limit at work`;
  return pO2Bar < LEAST_PO2_BAR ? `under ${LEAST_PO2_BAR}, the customary floor` : 'within what is taught';
}

/** The cylinder breathed at a sample: of several of the same gas, the one the supply says is in use. */
function cylinderInUse({ timeline, sample, supply }: ExposureMoment) {
  if (!supply) return undefined;
  const timeS = timeline.timeS[sample]!;
  const spell = supply.real.spells.findLast(({ leg, startS }) => leg === timeline.leg[sample] && startS <= timeS);
  const gas = gasAt(timeline, sample);
  // What is breathed is never taken from a cylinder before the first that holds it.
  const first = supply.real.cylinders.findIndex(({ cylinder }) => sameGas(cylinder.gas, gas));
  const index = Math.max(first, spell?.cylinder ?? first);
  const real = supply.real.cylinders[index];
  if (!real) return undefined;
  return {
    name: real.cylinder.name,
    gas: gasName(real.cylinder.gas),
    realBar: real.pressureBar[sample]!,
    idealBar: supply.ideal.cylinders[index]!.pressureBar[sample]!,
  };
}
