/** A place in a picture, picture units. */
interface Place {
  readonly x: number;
  readonly y: number;
}

export interface StopLabel extends Place {
  readonly text: string;
  readonly anchor: 'start' | 'end';
}

/** The size of a letter of these labels, picture units: what they need is measured in it. */
const LETTER = { wide: 7.2, high: 13 };
const GAP = 6;
const FURTHER = 12;

interface Box {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

/**
 * Where the words of stops stand: beside their stop, after it or before it, over or under it, wherever neither a line
 * that is drawn nor other words are. Words for which there is no such place are left out: the readings have them too.
 */
export function stopLabels(
  stops: readonly { readonly text: string; readonly fromX: number; readonly toX: number; readonly y: number }[],
  lines: readonly (readonly [Place, Place])[],
  within: { readonly width: number; readonly height: number },
): StopLabel[] {
  const taken: Box[] = [];
  return stops.flatMap(({ text, fromX, toX, y }) => {
    const wide = text.length * LETTER.wide;
    const after = { x: toX + GAP, anchor: 'start' as const, left: toX + GAP };
    const before = { x: fromX - GAP, anchor: 'end' as const, left: fromX - GAP - wide };
    // On its line, under it, over it.
    const baselines = [y + LETTER.high * 0.35, y + LETTER.high + GAP / 2, y - GAP];
    // Or beyond what stands at the ends of a stop.
    const further = (from: typeof after | typeof before, by: number) => ({
      ...from,
      x: from.x + by,
      left: from.left + by,
    });
    const places = [after, further(after, FURTHER), before, further(before, -FURTHER)];
    for (const { x, anchor, left } of places)
      for (const baseline of baselines) {
        const box = { left, right: left + wide, top: baseline - LETTER.high * 0.8, bottom: baseline + 3 };
        if (box.left < 0 || box.right > within.width || box.top < -LETTER.high || box.bottom > within.height) continue;
        if (taken.some((other) => overlap(box, other)) || lines.some((line) => crosses(line, box))) continue;
        taken.push(box);
        return [{ text, x, y: baseline, anchor }];
      }
    return [];
  });
}

function overlap(one: Box, other: Box): boolean {
  return one.left < other.right && other.left < one.right && one.top < other.bottom && other.top < one.bottom;
}

/** Whether a straight line has a point within a box (Liang and Barsky, 1984). */
function crosses([from, to]: readonly [Place, Place], box: Box): boolean {
  let [first, last] = [0, 1];
  const [byX, byY] = [to.x - from.x, to.y - from.y];
  const sides = [
    [-byX, from.x - box.left],
    [byX, box.right - from.x],
    [-byY, from.y - box.top],
    [byY, box.bottom - from.y],
  ] as const;
  for (const [by, room] of sides) {
    if (by === 0 && room < 0) return false;
    if (by < 0) first = Math.max(first, room / by);
    if (by > 0) last = Math.min(last, room / by);
  }
  return first <= last;
}
