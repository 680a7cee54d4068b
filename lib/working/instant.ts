import type { Figures } from '../ascent/figures';
import type { Timeline } from '../dive/timeline';

/** The moment a working is asked for: one sample of a timeline with its figures. */
export interface Instant {
  readonly timeline: Timeline;
  readonly figures: Figures;
  readonly sample: number;
}
