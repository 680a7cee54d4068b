/** How closely a moment is found, as a share of itself or of one minute: the last digits of a double. */
const CLOSENESS = 1e-14;

/**
 * Where a function that has another sign at `to` than at `from` takes on that sign, as near as doubles tell; the moment
 * itself has it. 0 counts as negative. By interpolation, truncation and projection (Oliveira and Takahashi 2020, ACM
 * Transactions on Mathematical Software 47:5): never more looks than halving takes, and far fewer on a smooth function.
 */
export function rootBetween(
  value: (at: number) => number,
  from: number,
  to: number,
  atFrom = value(from),
  atTo = value(to),
): number {
  const wanted = atTo > 0;
  const closeness = CLOSENESS * Math.max(1, Math.abs(to));
  const truncation = 0.2 / (to - from);
  let [before, after, atBefore, atAfter] = [from, to, atFrom, atTo];
  let allowance = closeness * 2 ** (Math.ceil(Math.log2((to - from) / (2 * closeness))) + 1);
  while (after - before > 2 * closeness) {
    const middle = (before + after) / 2;
    if (middle <= before || middle >= after) break;
    const straight = (atAfter * before - atBefore * after) / (atAfter - atBefore);
    const toMiddle = Math.sign(middle - straight);
    const truncated = truncation * (after - before) ** 2;
    const guess = truncated <= Math.abs(middle - straight) ? straight + toMiddle * truncated : middle;
    const room = allowance - (after - before) / 2;
    const projected = Math.abs(guess - middle) <= room ? guess : middle - toMiddle * room;
    const next = projected > before && projected < after ? projected : middle;
    const atNext = value(next);
    if (atNext > 0 === wanted) [after, atAfter] = [next, atNext];
    else [before, atBefore] = [next, atNext];
    allowance /= 2;
  }
  return after;
}

/** The first moment of what is so at `to` and not at `from`, by halving, this closely. */
export function changeBetween(so: (at: number) => boolean, from: number, to: number, closeness: number): number {
  const wanted = so(to);
  let [before, after] = [from, to];
  while (after - before > closeness) {
    const middle = (before + after) / 2;
    if (so(middle) === wanted) after = middle;
    else before = middle;
  }
  return after;
}
