import type { Dive } from '@/lib/dive/dive';
import { computeTimeline, type Timeline } from '@/lib/dive/timeline';
import { diveOf } from '../read';

/** The dive a script means; it has to read. */
export function scripted(...lines: string[]): Dive {
  return diveOf(lines.join('\n'));
}

export function timelineOf(...lines: string[]): Timeline {
  return computeTimeline(scripted(...lines), 10);
}
