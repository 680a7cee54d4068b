import type { Dive } from '@/lib/dive/dive';
import { parseScript } from '@/lib/dive/script';
import { computeTimeline, type Timeline } from '@/lib/dive/timeline';

/** The dive a script means; it has to read. */
export function scripted(...lines: string[]): Dive {
  const parsed = parseScript(lines.join('\n'));
  if (!parsed.ok) throw new Error(parsed.errors.map(({ message, mend }) => `${message} ${mend}`).join('\n'));
  return parsed.dive;
}

export function timelineOf(...lines: string[]): Timeline {
  return computeTimeline(scripted(...lines), 10);
}
