import { atmosphereBar } from '../physics/atmosphere';
import type { Start } from '../dive/dive';
import type { Timeline } from '../dive/timeline';
import { schreiner } from '../tissue/loading';
import type { LimitModel } from '../tissue/models/limit-model';
import {
  modelBreathedBar,
  modelCeilingM,
  modelNoStopMin,
  modelSettled,
  modelTensionsAfter,
} from '../tissue/models/model-figures';

/** What a limit model says of a dive: samples and depths are those of the engine's timeline it was made from. */
export interface ModelTimeline {
  readonly model: LimitModel;
  /** As many tensions for each sample as the model has compartments, bar. */
  readonly tensionsBar: Float64Array;
  /** By the model's own limits, without gradient factors; leaders from 1, 0 where there is none. */
  readonly ceilingM: Float64Array;
  readonly ceilingLeader: Uint8Array;
  /** 0 while there is a ceiling; Infinity where no limit would ever be reached. */
  readonly noStopMin: Float64Array;
  readonly noStopLeader: Uint8Array;
}

/**
 * Takes a model through the depths, gases and surface intervals of a dive. Throws RangeError if helium is breathed, or if
 * the dive starts with tensions carried over, which are those of sixteen other compartments.
 */
export function modelTimeline(model: LimitModel, timeline: Timeline): ModelTimeline {
  const { length, timeS, ambientBar, depthM, leg, legs, gases, conditions } = timeline;
  const count = model.compartments.length;
  const k = model.compartments.map(({ halfTimeMin }) => Math.LN2 / halfTimeMin);
  const made: ModelTimeline = {
    model,
    tensionsBar: new Float64Array(length * count),
    ceilingM: new Float64Array(length),
    ceilingLeader: new Uint8Array(length),
    noStopMin: new Float64Array(length),
    noStopLeader: new Uint8Array(length),
  };
  const { tensionsBar } = made;
  tensionsBar.set(startingTensions(model, conditions.start, timeline.surfaceBar));
  for (let i = 0; i < length; i += 1) {
    if (i > 0) {
      const gas = gases[legs[leg[i - 1]!]!.gas]!;
      const minutes = (timeS[i]! - timeS[i - 1]!) / 60;
      const fromBar = modelBreathedBar(model, gas, ambientBar[i - 1]!);
      const rate = minutes === 0 ? 0 : (modelBreathedBar(model, gas, ambientBar[i]!) - fromBar) / minutes;
      for (let c = 0; c < count; c += 1)
        tensionsBar[i * count + c] = schreiner(tensionsBar[(i - 1) * count + c]!, fromBar, rate, k[c]!, minutes);
    }
    const tensions = tensionsBar.subarray(i * count, (i + 1) * count);
    const ceiling = modelCeilingM(model, tensions, timeline);
    const left =
      ceiling.value > 0
        ? { value: 0, leader: ceiling.leader }
        : modelNoStopMin(model, depthM[i]!, gases[legs[leg[i]!]!.gas]!, timeline, tensions);
    made.ceilingM[i] = ceiling.value;
    made.ceilingLeader[i] = ceiling.leader;
    made.noStopMin[i] = left.value;
    made.noStopLeader[i] = left.leader;
  }
  return made;
}

function startingTensions(model: LimitModel, start: Start, surfaceBar: number): Float64Array {
  if (start.kind === 'tensions') {
    throw new RangeError(
      `${model.name} has its own compartments and can’t begin with the tensions of others: begin the dive rested instead`,
    );
  }
  if (start.kind === 'adapted') return modelSettled(model, atmosphereBar(start.altitudeM));
  const atSiteBar = modelSettled(model, surfaceBar)[0]!;
  return modelTensionsAfter(model, modelSettled(model, atmosphereBar(start.fromM)), atSiteBar, start.agoS / 60);
}
