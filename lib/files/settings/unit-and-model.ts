import { ascentStartAt } from '../../ascent/plan/ascent-start';
import type { Figures } from '../../ascent/figures';
import { ascentPlanner } from '../../ascent/plan/schedule';
import { sampleAt, type Timeline } from '../../dive/timeline';
import { UNIT_CHANNELS, type Recording, type UnitChannel } from '../records/record';

/** One moment of a record with what the unit showed and what the model says; NaN where one of them says nothing. */
export interface SideBySide {
  readonly timeS: number;
  readonly depthM: number;
  readonly unit: Readonly<Record<UnitChannel, number>>;
  readonly model: Readonly<Record<UnitChannel, number>>;
}

/** Which figures of its own a record holds. */
export function channelsOf(recording: Recording): UnitChannel[] {
  return UNIT_CHANNELS.filter((channel) => recording.unit[channel]?.some(Number.isFinite));
}

/**
 * Lays the unit's figures beside the model's, at up to `rows` moments spread evenly over those at which the unit showed
 * anything. An endless no-stop time is Infinity. The model's stop and its time are the
 * first of its schedule; 0 where the way up needs none.
 * @param offsetS what the record's times are short of the timeline's clock
 */
export function layBeside(
  recording: Recording,
  offsetS: number,
  timeline: Timeline,
  figures: Figures,
  rows = 400,
): SideBySide[] {
  const planAscent = ascentPlanner(figures.limits, timeline);
  const stops = channelsOf(recording).some((channel) => channel === 'stopDepthM' || channel === 'stopTimeS');
  return momentsTold(recording, rows).map((i) => {
    const sample = sampleAt(timeline, recording.timeS[i]! + offsetS);
    const noStopS = figures.noStopMin[sample]! * 60;
    const model = { noStopS, ceilingM: figures.ceilingM[sample]!, stopDepthM: NaN, stopTimeS: NaN };
    if (stops) {
      const [first] = planAscent(ascentStartAt(timeline, figures, sample)).stops;
      Object.assign(model, { stopDepthM: first?.depthM ?? 0, stopTimeS: (first?.minutes ?? 0) * 60 });
    }
    return { timeS: recording.timeS[i]!, depthM: recording.depthM[i]!, unit: unitAt(recording, i), model };
  });
}

function unitAt({ unit }: Recording, sample: number): Record<UnitChannel, number> {
  const at = (channel: UnitChannel) => unit[channel]?.[sample] ?? NaN;
  return { noStopS: at('noStopS'), ceilingM: at('ceilingM'), stopDepthM: at('stopDepthM'), stopTimeS: at('stopTimeS') };
}

/** Samples at which the unit showed something, thinned evenly to so many. */
function momentsTold(recording: Recording, most: number): number[] {
  const told: number[] = [];
  for (let i = 0; i < recording.timeS.length; i += 1) {
    if (UNIT_CHANNELS.some((channel) => Number.isFinite(recording.unit[channel]?.[i] ?? NaN))) told.push(i);
  }
  if (told.length <= most) return told;
  return Array.from({ length: most }, (_, i) => told[Math.floor((i * told.length) / most)]!);
}
