import type { RuleEvent } from '../rules/event';
import type { Watch } from '../rules/watch';

/** The first sample of the dive under way, or of the last one. */
export function firstUnderWater({ timeline, dives, tracks }: Watch, sample: number): number {
  const startS = dives[tracks.divesBegun[sample]! - 1]?.startS ?? 0;
  let first = sample;
  while (first > 0 && timeline.timeS[first - 1]! >= startS) first -= 1;
  return first;
}

/** What the unit told of one kind on this dive, up to a sample. */
export function thisDive(watch: Watch, sample: number, kind: string): RuleEvent[] {
  const startS = watch.dives[watch.tracks.divesBegun[sample]! - 1]?.startS ?? 0;
  const nowS = watch.timeline.timeS[sample]!;
  return watch.events.filter((event) => event.kind === kind && event.timeS >= startS && event.timeS <= nowS);
}

/** How many seconds each of a dive's penalties adds: so many times its breach's number, together no more than a most. */
export function penaltySizes(
  events: readonly RuleEvent[],
  { addsS, mostS }: { readonly addsS: number; readonly mostS: number },
): ReadonlyMap<RuleEvent, number> {
  const sizes = new Map<RuleEvent, number>();
  let total = 0;
  for (const event of events) {
    const size = Math.min(addsS * event.numbers['breach']!, mostS - total);
    sizes.set(event, size);
    total += size;
  }
  return sizes;
}
