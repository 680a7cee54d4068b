import { printStopDepth, sayDepth } from '../quantity/depth';
import { METRES_PER_FOOT } from '../quantity/length';
import { writeTime } from '../quantity/duration';
import { printRate } from '../quantity/rate';
import type { UnitSystem } from '../quantity/unit-system';

/** A span of time to the second: `20 s`, `1 min 20 s`. */
export function sayTime(spanS: number): string {
  return writeTime(Math.round(spanS));
}

/** Hours to the quarter, rounded up, since they are waited for: `12 h`, `17 h 45 min`. */
export function sayWait(hours: number): string {
  if (!Number.isFinite(hours)) return 'longer than can be told';
  const quarters = Math.ceil(hours * 4 - 1e-6);
  const whole = Math.floor(quarters / 4);
  const minutes = (quarters % 4) * 15;
  return [whole > 0 && `${whole} h`, minutes > 0 && `${minutes} min`].filter(Boolean).join(' ') || '0 h';
}

/** Where a safety stop is best made: `5 m`, which divers who think in feet call 15 ft. */
export function sayIdealDepth(depthM: number, system: UnitSystem): string {
  return system === 'metric' ? sayDepth(depthM, system) : `${Math.round(depthM / METRES_PER_FOOT / 5) * 5} ft`;
}

const FIGURES: readonly (readonly [metric: RegExp, say: (number: string) => string])[] = [
  [/(\d+) m\/min/g, (number) => printRate(Number(number), 'imperial')],
  [/(\d+) m\b(?!\/)/g, (number) => sayIdealDepth(Number(number), 'imperial')],
  [/\bmetres\b/g, () => 'feet'],
];

/** A sentence written with metres, in the units a person reads: depths to the nearest 5 ft, as stops are told. */
export function inUnits(sentence: string, system: UnitSystem): string {
  if (system === 'metric') return sentence;
  return FIGURES.reduce((said, [metric, say]) => said.replace(metric, (_, number: string) => say(number)), sentence);
}

/** Two stop depths as a band: `3 to 6 m`, `10 to 20 ft`. */
export function sayBand(fromM: number, toM: number, system: UnitSystem): string {
  return `${printStopDepth(fromM, system).replace(/ .*$/, '')} to ${printStopDepth(toM, system)}`;
}
