/**
 * A source of numbers from 0 to less than 1 that gives the same ones for the same seed (mulberry32, by Tommy Ettinger, public
 * domain). Good enough to spread samples, and for nothing secret.
 */
export function seeded(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4_294_967_296;
  };
}

/** The same things in an order drawn by chance (Fisher and Yates). */
export function shuffled<T>(things: readonly T[], chance: () => number): T[] {
  const order = [...things];
  for (let i = order.length - 1; i > 0; i -= 1) {
    const other = Math.floor(chance() * (i + 1));
    [order[i], order[other]] = [order[other]!, order[i]!];
  }
  return order;
}
