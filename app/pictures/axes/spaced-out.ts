/**
 * Moves places apart that are closer than `gap`, keeping their order, within 0 to `end`. Gives the new places in the
 * order of the old ones.
 */
export function spacedOut(places: readonly number[], gap: number, end: number): number[] {
  const order = places.map((_, index) => index).sort((one, other) => places[one]! - places[other]!);
  const moved = [...places];
  let least = 0;
  for (const index of order) {
    moved[index] = Math.max(moved[index]!, least);
    least = moved[index]! + gap;
  }
  let most = end;
  for (const index of order.reverse()) {
    moved[index] = Math.min(moved[index]!, most);
    most = moved[index]! - gap;
  }
  return moved;
}
