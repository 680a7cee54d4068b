import type { Figures } from '@/lib/ascent/figures';
import type { Timeline } from '@/lib/dive/timeline';
import type { Leg } from '@/lib/dive/legs';
import { sameGas } from '@/lib/physics/gas';
import { tidy } from '@/lib/quantity/number';
import type { GasSwitch, Recording, UnitFigures } from '@/lib/files/records/record';

/**
 * A timeline as recordings, one for each dive of the day, ready to be written to a file. With `figures` the model's
 * no-stop times and ceilings stand where a unit's own would.
 */
export function recordingsOfTimeline(timeline: Timeline, figures?: Figures): Recording[] {
  const { altitudeM, water } = timeline.conditions;
  const recordings: Recording[] = [];
  let dive: Leg[] = [];
  let endedS = NaN;
  const finish = () => {
    if (dive.length === 0) return;
    const made = recordingOf(timeline, figures, dive, recordings.length + 1);
    const startS = dive[0]!.startS;
    recordings.push({
      ...made,
      clockS: startS,
      intervalBeforeS: recordings.length === 0 ? undefined : tidy(startS - endedS),
      altitudeM,
      water,
    });
    endedS = dive.at(-1)!.endS;
    dive = [];
  };
  for (const leg of timeline.legs) {
    if (leg.interval || (dive.length > 0 && leg.diveNumber !== dive[0]!.diveNumber)) finish();
    if (!leg.interval) dive.push(leg);
  }
  finish();
  return recordings;
}

function recordingOf(
  timeline: Timeline,
  figures: Figures | undefined,
  legs: readonly Leg[],
  number: number,
): Recording {
  const startS = legs[0]!.startS;
  const endS = legs.at(-1)!.endS;
  const samples: number[] = [];
  for (let i = 0; i < timeline.length; i += 1) {
    const time = timeline.timeS[i]!;
    // Where a step has no length two samples share their time: the later one is in force.
    if (samples.length > 0 && timeline.timeS[samples.at(-1)!] === time) samples.pop();
    if (time >= startS && time <= endS) samples.push(i);
  }
  const switches: GasSwitch[] = [];
  for (const leg of legs) {
    const gas = timeline.gases[leg.gas]!;
    if (switches.length === 0 || !sameGas(switches.at(-1)!.gas, gas))
      switches.push({ timeS: tidy(leg.startS - startS), gas });
  }
  const pick = (from: Float64Array, scale = 1) => Float64Array.from(samples, (i) => from[i]! * scale);
  const unit: UnitFigures = figures
    ? {
        noStopS: pick(figures.noStopMin, 60).map((seconds) => (Number.isFinite(seconds) ? seconds : NaN)),
        ceilingM: pick(figures.ceilingM),
      }
    : {};
  return {
    name: `Dive ${number}`,
    rowsAre: 'row',
    row: Uint32Array.from(samples, (_, i) => i + 1),
    timeS: Float64Array.from(samples, (i) => tidy(timeline.timeS[i]! - startS)),
    depthM: pick(timeline.depthM),
    switches,
    unit,
    temperatureC: undefined,
    startedAt: undefined,
    clockS: startS,
    intervalBeforeS: undefined,
    altitudeM: undefined,
    water: undefined,
    unread: [],
  };
}
