import { figuresInForce, type Watch } from '../../rules/watch';
import type { Instant } from '../instant';

/** The moment a unit's own reading is asked about. */
export interface UnitInstant {
  readonly watch: Watch;
  readonly sample: number;
}

/** The same moment as the unit's model sees it, under the limits the unit goes by there. */
export function modelInstant({ watch, sample }: UnitInstant): Instant {
  return { timeline: watch.timeline, figures: figuresInForce(watch, sample), sample };
}
