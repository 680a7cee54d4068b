import type { Figures } from '../ascent/figures';
import type { Timeline } from '../dive/timeline';
import { COMPARTMENTS } from '../tissue/coefficients';
import { ceilingWorking } from './model/ceiling-working';
import { creditedNoStopWorking } from './model/credited-no-stop-working';
import { endWorking } from './oxygen/end-working';
import { gasDensityWorking } from './oxygen/gas-density-working';
import type { Instant } from './instant';
import { modWorking } from './oxygen/mod-working';
import { noStopWorking } from './model/no-stop-working';
import { dailyOxygenWorking, singleOxygenWorking } from './oxygen/oxygen-fraction-working';
import { pulmonaryOxygenWorking } from './oxygen/oxygen-lungs-working';
import { oxygenPressureWorking } from './oxygen/partial-pressure-working';
import { requiredStopWorking } from './model/required-stop-working';
import { supersaturationWorking, surfacingSupersaturationWorking } from './model/supersaturation-working';
import { tensionWorking } from './model/tension-working';
import { timeToSurfaceWorking } from './model/time-to-surface-working';
import type { Working } from './working';

/** Every reading of the model that can be asked "why?", each with what answers. */
const WORKINGS = {
  'no-stop': noStopWorking,
  'credited-no-stop': creditedNoStopWorking,
  ceiling: ceilingWorking,
  'required-stop': requiredStopWorking,
  'time-to-surface': timeToSurfaceWorking,
  supersaturation: supersaturationWorking,
  'surfacing-supersaturation': surfacingSupersaturationWorking,
  'oxygen-pressure': oxygenPressureWorking,
  'oxygen-single': singleOxygenWorking,
  'oxygen-daily': dailyOxygenWorking,
  'oxygen-pulmonary': pulmonaryOxygenWorking,
  'gas-density': gasDensityWorking,
  mod: (instant: Instant) => modWorking(instant),
  end: (instant: Instant) => endWorking(instant),
  'end-nitrogen': (instant: Instant) => endWorking(instant, 'nitrogen'),
} satisfies Readonly<Record<string, (instant: Instant) => Working>>;

/** A reading by its id; `tension-7` is what compartment 7 holds. */
export type ReadingId = keyof typeof WORKINGS | `tension-${number}`;

export const READING_IDS: readonly ReadingId[] = [
  ...(Object.keys(WORKINGS) as (keyof typeof WORKINGS)[]),
  ...Array.from({ length: COMPARTMENTS }, (_, c) => `tension-${c + 1}` as const),
];

/** Why a reading is what it is at one sample. Throws RangeError for a reading or a sample there is not. */
export function workingFor(reading: ReadingId, timeline: Timeline, figures: Figures, sample: number): Working {
  if (!Number.isInteger(sample) || sample < 0 || sample >= timeline.length) {
    throw new RangeError(`the timeline has no sample ${sample}: its samples are numbered 0 to ${timeline.length - 1}`);
  }
  const instant: Instant = { timeline, figures, sample };
  const compartment = /^tension-(\d+)$/.exec(reading)?.[1];
  if (compartment !== undefined) return tensionWorking(instant, Number(compartment));
  if (!Object.hasOwn(WORKINGS, reading)) throw new RangeError(`nothing is known of a reading called ${reading}`);
  return WORKINGS[reading as keyof typeof WORKINGS](instant);
}
