import { fixed } from '@/lib/quantity/number';
import { printHours } from '@/lib/quantity/duration';

/** A no-stop time in whole minutes, cut and never rounded up: an instrument shows no minute it does not have. */
export function sayNoStop(minutes: number): string {
  if (minutes === Infinity) return 'no limit';
  if (minutes <= 0) return 'none left';
  return minutes >= 180 ? printHours(Math.floor(minutes + 1e-6) * 60) : `${fixed(Math.floor(minutes + 1e-6), 0)} min`;
}

/** To a tenth, where figures are compared. */
export function sayTenths(minutes: number): string {
  return Number.isFinite(minutes) ? `${fixed(minutes, 1)} min` : 'no limit';
}

/** A way up in whole minutes, rounded up. */
export function sayWayUp(minutes: number): string {
  return Number.isFinite(minutes) ? `${fixed(Math.ceil(minutes - 1e-6), 0)} min` : 'no stop is long enough';
}
