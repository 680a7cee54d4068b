/** A line through samples, as few points as a picture needs. */
export interface Trace {
  readonly timeS: Float64Array;
  readonly valueOf: Float64Array;
}

/**
 * Thins samples for drawing: of each of `parts` stretches of as many samples the lowest and the highest value stay, in their
 * order, so that no spike is lost. Samples that are not numbers are passed over.
 */
export function thinned(timeS: Float64Array, values: Float64Array, parts: number): Trace {
  const good: number[] = [];
  for (let i = 0; i < timeS.length; i += 1) if (Number.isFinite(timeS[i]!) && Number.isFinite(values[i]!)) good.push(i);
  const kept = good.length <= 2 * parts ? good : extremes(good, values, parts);
  return { timeS: Float64Array.from(kept, (i) => timeS[i]!), valueOf: Float64Array.from(kept, (i) => values[i]!) };
}

function extremes(good: readonly number[], values: Float64Array, parts: number): number[] {
  const kept: number[] = [];
  const size = good.length / parts;
  for (let part = 0; part < parts; part += 1) {
    const from = Math.floor(part * size);
    const to = Math.floor((part + 1) * size);
    let low = good[from]!;
    let high = low;
    for (let k = from; k < to; k += 1) {
      const i = good[k]!;
      if (values[i]! < values[low]!) low = i;
      if (values[i]! > values[high]!) high = i;
    }
    kept.push(Math.min(low, high));
    if (low !== high) kept.push(Math.max(low, high));
  }
  const last = good.at(-1)!;
  if (kept.at(-1) !== last) kept.push(last);
  return kept;
}
