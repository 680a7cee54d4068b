/** One thing that is timed. `prepare` is not; `run` is called once a sample. */
export interface Workload {
  readonly name: string;
  /** What is done in one sample, for a person. */
  readonly about: string;
  readonly samples: number;
  readonly prepare: () => (sample: number) => unknown;
}

export interface Timed {
  readonly name: string;
  readonly medianMs: number;
  readonly samples: number;
}

/** Runs before the timed ones, so that the compiler has seen the code. */
const WARM_UP = 5;

export function timed({ name, samples, prepare }: Workload): Timed {
  const run = prepare();
  for (let i = 0; i < WARM_UP; i += 1) run(i);
  const times = Array.from({ length: samples }, (_, sample) => {
    const start = performance.now();
    run(sample);
    return performance.now() - start;
  });
  return { name, medianMs: medianOf(times), samples };
}

export function medianOf(times: readonly number[]): number {
  const sorted = [...times].sort((one, other) => one - other);
  return sorted[Math.floor(sorted.length / 2)] ?? NaN;
}
