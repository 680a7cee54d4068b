import type { Leg } from '../../dive/legs';
import { isMultiple } from '../../dive/sample-instants';
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

  /** For each leg, whether it only goes on as the one before did: where a step is cut in two nothing happens. */
  private readonly goesOn: readonly boolean[];

  /** A unit looks every `tickS` seconds and at each change; with `betweenToo` the timeline has samples it doesn't look at. */
  constructor(
    private readonly timeline: Timeline,
    private readonly rates: Float64Array,
    private readonly tickS: number,
    private readonly betweenToo: boolean,
  ) {
    this.climb = climbs(timeline);
    this.goesOn = timeline.legs.map((leg, index) => index > 0 && isSame(timeline.legs[index - 1]!, leg));
  }

  /** Whether a unit looks at a sample. */
  private looksAt(sample: number): boolean {
    const { timeS, leg, length } = this.timeline;
    if (sample === 0 || sample === length - 1) return true;
    const begins = leg[sample] !== leg[sample - 1];
    if (begins && !this.goesOn[leg[sample]!]) return true;
    return begins || this.betweenToo ? isMultiple(timeS[sample]!, this.tickS) : true;
  }

  /** Moves on to the next sample that is looked at; false once there is none left. */
  next(): boolean {
    const { timeline } = this;
    let sample = this.sample + 1;
    while (sample < timeline.length && !this.looksAt(sample)) sample += 1;
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

/** Two legs whose rates differ by less than this, m/s, go on alike. */
const SAME_RATE_M_S = 1e-9;

function isSame(before: Leg, leg: Leg): boolean {
  const rate = ({ startS, endS, fromM, toM }: Leg) => (endS > startS ? (toM - fromM) / (endS - startS) : 0);
  return (
    before.diveNumber === leg.diveNumber &&
    before.interval === leg.interval &&
    before.gas === leg.gas &&
    Math.abs(rate(before) - rate(leg)) < SAME_RATE_M_S
  );
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
