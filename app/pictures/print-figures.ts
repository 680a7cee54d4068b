import { NO_STOP_CAP_MIN } from '@/lib/ascent/no-stop';

/** Whole minutes left, as a person reads a no-stop time: rounded down, and no figure beyond the cap. */
export function noStopText(minutes: number): string {
  return minutes > NO_STOP_CAP_MIN ? `>${NO_STOP_CAP_MIN}` : String(Math.floor(minutes + 1e-9));
}

/** Minutes of an ascent, rounded up: nobody is told to be out sooner than they can be. */
export function ascentMinutesText(minutes: number): string {
  return Number.isFinite(minutes) ? String(Math.ceil(minutes - 1e-9)) : 'never';
}
