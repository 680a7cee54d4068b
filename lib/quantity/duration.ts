import { fixed, plainNumber } from './number';
import { roundedTo, type Rounding } from './rounding';

export const MINUTE_S = 60;
export const HOUR_S = 3600;
export const DAY_S = 24 * HOUR_S;
/** Below this, people count in minutes: a surface interval is 90 min or 2 h 30 min alike, a night is never 720 min. */
const HOURS_FROM_S = 3 * HOUR_S;

/** A length of time written out so that it reads back as exactly the same: `20 min`, `1 min 40 s`, `12 h 30 min`. */
export function writeTime(timeS: number): string {
  if (!Number.isInteger(timeS) || timeS === 0) return `${plainNumber(timeS)} s`;
  const hours = timeS < HOURS_FROM_S ? 0 : Math.floor(timeS / HOUR_S);
  const minutes = Math.floor((timeS - hours * HOUR_S) / MINUTE_S);
  const seconds = timeS - hours * HOUR_S - minutes * MINUTE_S;
  return [hours && `${hours} h`, minutes && `${minutes} min`, seconds && `${seconds} s`].filter(Boolean).join(' ');
}

/** Time of a run as a clock shows it, minutes and seconds: `2:50`, `72:05`. Whole seconds gone by. */
export function printClock(timeS: number): string {
  if (!Number.isFinite(timeS)) return '–';
  // A second is gone once it is over; the small allowance is for sums of fractions.
  const whole = Math.floor(Math.abs(timeS) + 1e-6);
  const sign = timeS < 0 && whole > 0 ? '−' : '';
  return `${sign}${Math.floor(whole / MINUTE_S)}:${String(whole % MINUTE_S).padStart(2, '0')}`;
}

/** Whole minutes: `12 min`. */
export function printMinutes(timeS: number, rounding: Rounding = 'nearest'): string {
  return `${fixed(roundedTo(timeS / MINUTE_S, 0, rounding), 0)} min`;
}

/** Hours and minutes, for intervals and waits: `45 min`, `1 h 05 min`, `26 h`. */
export function printHours(timeS: number, rounding: Rounding = 'nearest'): string {
  if (!Number.isFinite(timeS)) return '–';
  const minutes = roundedTo(timeS / MINUTE_S, 0, rounding);
  if (minutes < 60) return `${minutes} min`;
  const rest = minutes % 60;
  return `${Math.floor(minutes / 60)} h${rest === 0 ? '' : ` ${String(rest).padStart(2, '0')} min`}`;
}
