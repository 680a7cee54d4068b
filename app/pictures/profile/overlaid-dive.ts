import { plannedAt } from '@/lib/ascent/ascent-start';
import { figuresOf, type Figures } from '@/lib/ascent/figures';
import { parseScript } from '@/lib/dive/script';
import { computeTimeline, type Timeline } from '@/lib/dive/timeline';
import { sayDepth } from '@/lib/quantity/depth';
import { printClock } from '@/lib/quantity/duration';
import type { UnitSystem } from '@/lib/quantity/unit-system';
import { deskSampling, type Scene } from '../scene';

/** A second dive laid over the first, to be compared with it. */
export interface OverlaidDive {
  readonly title: string;
  readonly timeline: Timeline;
  readonly figures: Figures;
}

/** Works a second dive out; undefined where its script makes no sense. */
export function overlaidDive(title: string, script: string): OverlaidDive | undefined {
  const parsed = parseScript(script);
  if (!parsed.ok) return undefined;
  const { everyS, intervalEveryS } = deskSampling(parsed.dive);
  const timeline = computeTimeline(parsed.dive, everyS, { intervalEveryS });
  return { title, timeline, figures: figuresOf(timeline, parsed.dive.settings) };
}

interface DiveInShort {
  readonly deepestM: number;
  readonly endS: number;
  readonly ceilingM: number;
  /** The most minutes of stops asked for at any change of the dive. */
  readonly stopsMin: number;
}

function inShort({ timeline, figures }: Pick<OverlaidDive, 'timeline' | 'figures'>): DiveInShort {
  let stopsMin = 0;
  for (let i = 1; i < timeline.length; i += 1) {
    if (timeline.leg[i] === timeline.leg[i - 1] || figures.ceilingM[i] === 0) continue;
    const { stops } = plannedAt(timeline, figures, i);
    stopsMin = Math.max(
      stopsMin,
      stops.reduce((sum, stop) => sum + stop.minutes, 0),
    );
  }
  return {
    deepestM: timeline.legs.reduce((deepest, leg) => Math.max(deepest, leg.toM), 0),
    endS: timeline.timeS.at(-1)!,
    ceilingM: figures.ceilingM.reduce((deepest, ceiling) => Math.max(deepest, ceiling), 0),
    stopsMin,
  };
}

/** How a second dive differs from the one on the desk, in one sentence. */
export function sayOverlaid(other: OverlaidDive, scene: Scene, units: UnitSystem): string {
  const [theirs, ours] = [inShort(other), inShort(scene)];
  const differences = [
    differs(theirs.deepestM, ours.deepestM, 'deeper', 'shallower', (by) => sayDepth(by, units)),
    differs(theirs.endS, ours.endS, 'longer', 'shorter', printClock),
    differs(theirs.ceilingM, ours.ceilingM, 'deeper in its deepest ceiling', 'shallower in its deepest ceiling', (by) =>
      sayDepth(by, units),
    ),
    differs(theirs.stopsMin, ours.stopsMin, 'more of required stops', 'less of required stops', (by) => `${by} min`),
  ].filter((text) => text !== undefined);
  return `${other.title}, dashed, is ${differences.length > 0 ? differences.join(', ') : 'the same in depth, time, ceiling and stops'}.`;
}

function differs(
  theirs: number,
  ours: number,
  more: string,
  less: string,
  say: (by: number) => string,
): string | undefined {
  const by = Math.abs(theirs - ours);
  if (by < 0.05) return undefined;
  return `${say(by)} ${theirs > ours ? more : less}`;
}
