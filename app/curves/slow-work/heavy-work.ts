import { depthLadder } from '@/lib/curves/curve-site';
import { gradientFactorSweep, type SweepGrid, type SweepRequest } from '@/lib/curves/gradient-factor-sweep';
import { ceilingBand, noStopBand, type Band } from '@/lib/curves/how-sure';
import type { NoStopConditions } from '@/lib/curves/no-stop-curve';
import type { Variation } from '@/lib/curves/variation';
import type { Dive } from '@/lib/dive/dive';

/** Work too long for the page's own thread, as plain data that a worker can be sent. */
export type HeavyJob = SweepJob | SureJob;

export interface SweepJob {
  readonly kind: 'sweep';
  readonly request: SweepRequest;
}

export interface SureJob {
  readonly kind: 'sure';
  readonly conditions: NoStopConditions;
  readonly depthsM: { readonly from: number; readonly to: number; readonly step: number };
  readonly dive: Dive;
  readonly everyS: number;
  readonly variation: Variation;
}

export interface SureBands {
  readonly noStop: Band;
  readonly ceiling: Band;
}

export type HeavyResult<Job extends HeavyJob> = Job extends SweepJob ? SweepGrid : SureBands;

export interface HeavyProgress {
  readonly done: number;
  readonly of: number;
}

/** Works a job out piece by piece, telling after each how far it has come; the result is what it returns. */
export function* heavyWork(job: HeavyJob): Generator<HeavyProgress, SweepGrid | SureBands> {
  if (job.kind === 'sure') return yield* sureBands(job);
  const sweep = gradientFactorSweep(job.request);
  for (;;) {
    const step = sweep.next();
    if (step.done) return step.value;
    yield { done: step.value.rowsDone, of: step.value.rows };
  }
}

const DEPTHS_AT_ONCE = 12;

function* sureBands({ conditions, depthsM, dive, everyS, variation }: SureJob): Generator<HeavyProgress, SureBands> {
  const ladder = depthLadder(depthsM.from, depthsM.to, depthsM.step);
  const pieces: Band[] = [];
  const of = Math.ceil(ladder.length / DEPTHS_AT_ONCE) + 1;
  for (let from = 0; from < ladder.length; from += DEPTHS_AT_ONCE) {
    pieces.push(noStopBand(conditions, ladder.subarray(from, from + DEPTHS_AT_ONCE), variation));
    yield { done: pieces.length, of };
  }
  const all = (pick: (band: Band) => Float64Array) => Float64Array.from(pieces.flatMap((band) => [...pick(band)]));
  const noStop = {
    at: all(({ at }) => at),
    low: all(({ low }) => low),
    middle: all(({ middle }) => middle),
    high: all(({ high }) => high),
  };
  return { noStop, ceiling: ceilingBand(dive, everyS, variation) };
}
