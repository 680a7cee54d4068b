/** The item at the least distance; undefined of none. */
export function nearest<Item>(items: readonly Item[], distance: (item: Item) => number): Item | undefined {
  let best: Item | undefined;
  let least = Infinity;
  for (const item of items) {
    const own = distance(item);
    if (own >= least) continue;
    best = item;
    least = own;
  }
  return best;
}
