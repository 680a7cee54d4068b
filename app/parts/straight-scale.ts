/** A straight line from what is measured to where it is drawn, and back. */
export interface StraightScale {
  (value: number): number;
  invert(place: number): number;
}

/**
 * Through two points or more, straight between them and beyond the last; both lists rise, or `places` falls between
 * just two. D3's linear scale does the same and is used where a picture is fetched later: it brings colours, dates and
 * their formats along, 17 kB that would come before the first picture of a page.
 */
export function straightScale(values: readonly number[], places: readonly number[]): StraightScale {
  return Object.assign((value: number) => between(value, values, places), {
    invert: (place: number) => between(place, places, values),
  });
}

function between(at: number, from: readonly number[], to: readonly number[]): number {
  let part = 1;
  while (part < from.length - 1 && at > from[part]!) part += 1;
  const [start, end] = [from[part - 1]!, from[part]!];
  const [first, last] = [to[part - 1]!, to[part]!];
  return start === end ? (first + last) / 2 : first + ((at - start) / (end - start)) * (last - first);
}
