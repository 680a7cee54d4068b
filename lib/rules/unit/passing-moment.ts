import type { Timeline } from '../../dive/timeline';
import type { Moment } from '../rule';

/** One moment that is moved along a timeline, so that a long day is watched without making an object for each sample. */
export class PassingMoment implements Moment {
  sample = -1;
  timeS = 0;
  elapsedS = 0;
  depthM = 0;
  depthBeforeM = 0;
  rateMMin = 0;
  climbFromS = 0;
  climbFromM = 0;
  atSurface = true;
  surfaces = false;
  diveStarts = false;
  diveNumber = -1;
  leg = 0;

  /** For each leg, the first leg of the climb it is part of, however many legs tell that climb; -1 where it is none. */
  private readonly climb: readonly number[];

  constructor(
    private readonly timeline: Timeline,
    private readonly rates: Float64Array,
  ) {
    this.climb = climbs(timeline);
  }

  /** Moves on by one sample; false once there is none left. */
  next(): boolean {
    const { timeline } = this;
    const sample = this.sample + 1;
    if (sample >= timeline.length) return false;
    const timeS = timeline.timeS[sample]!;
    const depthM = timeline.depthM[sample]!;
    // What leads to a sample is the leg of the sample before.
    const climbLeg = sample > 0 ? this.climb[this.leg]! : -1;
    this.elapsedS = sample > 0 ? timeS - this.timeS : 0;
    this.depthBeforeM = sample > 0 ? this.depthM : depthM;
    this.climbFromS = climbLeg >= 0 ? timeline.legs[climbLeg]!.startS : timeS;
    this.climbFromM = climbLeg >= 0 ? timeline.legs[climbLeg]!.fromM : depthM;
    this.sample = sample;
    this.timeS = timeS;
    this.depthM = depthM;
    this.rateMMin = this.rates[sample]!;
    this.atSurface = depthM <= 0;
    this.surfaces = this.atSurface && this.depthBeforeM > 0;
    this.leg = timeline.leg[sample]!;
    const { diveNumber, interval } = timeline.legs[this.leg]!;
    this.diveStarts = diveNumber !== this.diveNumber && !interval;
    if (this.diveStarts) this.diveNumber = diveNumber;
    return true;
  }
}

function climbs({ legs }: Timeline): number[] {
  const first: number[] = [];
  legs.forEach(({ fromM, toM, diveNumber }, index) => {
    const before = legs[index - 1];
    const goesOn = before !== undefined && before.diveNumber === diveNumber && before.toM < before.fromM;
    first.push(toM >= fromM ? -1 : goesOn ? first[index - 1]! : index);
  });
  return first;
}
