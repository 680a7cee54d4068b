import type { UnitSystem } from '@/lib/quantity/unit-system';
import type { Scene } from './scene';

/** What every picture is drawn from. A picture keeps no state of the dive; the desk around it does. */
export interface PictureProps {
  scene: Scene;
  /** The sample the time cursor stands on, and the time itself. */
  sample: number;
  cursorS: number;
  /** CSS pixels. */
  width: number;
  height: number;
  units: UnitSystem;
  onCursor: (timeS: number) => void;
  /** The stretch of time shown; the whole day when left out. */
  view?: { readonly startS: number; readonly endS: number } | undefined;
}
