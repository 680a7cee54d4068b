import type { Dive } from '@/lib/dive/dive';
import { writeScript } from '@/lib/dive/script';
import { howMuchMore } from '@/lib/ways-out/how-much-more';
import type { Target } from '@/lib/ways-out/trouble';
import { settingsThatMadeIt } from '@/lib/ways-out/unit-settings';
import { systemOf, waysOut, type NoWayOut, type WayOut } from '@/lib/ways-out/ways-out';

export type WayOutReading = Omit<WayOut, 'title'> | Omit<NoWayOut, 'title'>;

/** What would have avoided a stop, a ceiling or a “slow down”; of a dive without one, how much more it would have taken. */
export function waysOutReadings(
  dive: Dive,
  target: Target,
): { waysOut: readonly WayOutReading[]; howMuchMore?: readonly WayOutReading[] } {
  const script = writeScript(dive);
  const question = { target, system: systemOf(script) };
  const ways = [...waysOut(script, question), ...settingsThatMadeIt(script, question)].map(untitled);
  return ways.length > 0
    ? { waysOut: ways }
    : { waysOut: [], howMuchMore: howMuchMore(script, question).map(untitled) };
}

function untitled({ title: _title, ...way }: WayOut | NoWayOut): WayOutReading {
  return way;
}
