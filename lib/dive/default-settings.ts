import { AIR } from '../physics/gas';
import type { Settings } from './dive';

/** How fast a descent goes that gives no rate, where the plan gives none either, m/min. */
export const USUAL_DESCENT_M_MIN = 18;

/** What a script means by the settings it leaves out. Made new each time, so that a caller may change it. */
export function defaultSettings(): Settings {
  return {
    water: 'reference',
    altitudeM: 0,
    start: { kind: 'adapted', altitudeM: 0 },
    model: { variant: 'C', first: '1b', respiratoryQuotient: 1 },
    gradientFactors: { low: 0.85, high: 0.85 },
    gas: { ...AIR },
    carried: [],
    plan: { ascentMMin: 9, stopStepM: 3, lastStopM: 3, stopRoundingMin: 1 },
    setups: [],
  };
}
