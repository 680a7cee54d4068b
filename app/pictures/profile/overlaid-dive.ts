import { plannedAt } from '@/lib/ascent/plan/ascent-start';
import { SAME_DEPTH_M } from '@/lib/ascent/ceiling';
import { figuresOf, loadAt, type Figures } from '@/lib/ascent/figures';
import { supersaturation } from '@/lib/ascent/supersaturation';
import { parseScript } from '@/lib/dive/script';
import { computeTimeline, type Timeline } from '@/lib/dive/timeline';
import { sayDepth } from '@/lib/quantity/depth';
import { printClock } from '@/lib/quantity/duration';
import { printAs } from '@/lib/sayings/measures';
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

/** What a diver would ask of a dive: what was owed, what was broken, how full of gas one came out; then how deep and long it was. */
interface DiveInShort {
  readonly deepestM: number;
  readonly endS: number;
  /** The deepest ceiling, m. */
  readonly ceilingM: number;
  /** The most minutes of stops asked for at any change of the dive. */
  readonly stopsMin: number;
  /** How long the diver was above the ceiling, surfacing included, s, and by how much at most, m. */
  readonly aboveS: number;
  readonly aboveM: number;
  /** The most supersaturation on coming to the surface, a share of the limit. */
  readonly surfacing: number;
}

const known = new WeakMap<Figures, DiveInShort>();

function inShort(dive: Pick<OverlaidDive, 'timeline' | 'figures'>): DiveInShort {
  const short = known.get(dive.figures) ?? shortened(dive);
  known.set(dive.figures, short);
  return short;
}

function shortened({ timeline, figures }: Pick<OverlaidDive, 'timeline' | 'figures'>): DiveInShort {
  const { timeS, depthM, leg, legs, surfaceBar } = timeline;
  let [stopsMin, aboveS, aboveM, surfacing] = [0, 0, 0, 0];
  for (let i = 1; i < timeline.length; i += 1) {
    const surfaced = depthM[i]! <= 0 && depthM[i - 1]! > 0;
    if (surfaced) surfacing = Math.max(surfacing, supersaturation(loadAt(timeline, i), surfaceBar).value);
    const overM = figures.ceilingM[i]! - depthM[i]!;
    // Hours at the surface between dives are no breach that goes on.
    if (overM > SAME_DEPTH_M && (surfaced || depthM[i]! > 0)) {
      aboveM = Math.max(aboveM, overM);
      if (!surfaced) aboveS += timeS[i]! - timeS[i - 1]!;
    }
    if (leg[i] === leg[i - 1] || figures.ceilingM[i] === 0) continue;
    const { stops } = plannedAt(timeline, figures, i);
    stopsMin = Math.max(
      stopsMin,
      stops.reduce((sum, stop) => sum + stop.minutes, 0),
    );
  }
  return {
    deepestM: legs.reduce((deepest, { toM }) => Math.max(deepest, toM), 0),
    endS: timeS.at(-1)!,
    ceilingM: figures.ceilingM.reduce((deepest, ceiling) => Math.max(deepest, ceiling), 0),
    stopsMin,
    aboveS,
    aboveM,
    surfacing,
  };
}

/** How a second dive differs from the one on the desk: what differs for a diver first, then its shape. */
export function sayOverlaid(other: OverlaidDive, scene: Scene, units: UnitSystem): string {
  const [theirs, ours] = [inShort(other), inShort(scene)];
  const told: readonly [say: (dive: DiveInShort) => string, lead: string][] = [
    [({ ceilingM }) => printAs('ceilingM', ceilingM, units), 'deepest ceiling'],
    [({ stopsMin }) => (stopsMin > 0 ? printAs('stopMin', stopsMin, units) : 'none'), 'stops owed'],
    [(dive) => sayAbove(dive, units), 'above the ceiling'],
    [({ surfacing }) => printAs('supersaturation', surfacing, units), 'on surfacing'],
    [({ deepestM }) => sayDepth(deepestM, units), 'depth'],
    [({ endS }) => printClock(endS), 'time'],
  ];
  const differences = told.flatMap(([say, lead]) => {
    const [its, own] = [say(theirs), say(ours)];
    return its === own ? [] : [`${lead} ${its} instead of ${own}`];
  });
  const same = 'the same ceiling, stops, supersaturation on surfacing, depth and time';
  return `${other.title}, dashed: ${differences.length > 0 ? differences.join('; ') : same}.`;
}

function sayAbove({ aboveS, aboveM }: DiveInShort, units: UnitSystem): string {
  if (aboveM === 0) return 'never';
  const by = `by ${printAs('ceilingM', aboveM, units)}`;
  return aboveS >= 1 ? `${by} at most, for ${printClock(aboveS)}` : `${by} on surfacing`;
}
