import { line } from 'd3';
import { CROSS_MARGIN } from '../../pictures/axes/CrossAxes';
import type { PlotScale } from '../../pictures/axes/plot-axis';
import { spacedOut } from '../../pictures/axes/spaced-out';

/** Across and up (or down), in the units of the axes. */
export type PlotPoint = readonly [number, number];

export interface PlotCurve {
  readonly id: string;
  readonly points: readonly PlotPoint[];
  /** Its dash and the shape of its marks. */
  readonly look: number;
  /** `gas` for gas in the body, `stop` for what the model says of stops; ink otherwise. */
  readonly tone?: 'ink' | 'gas' | 'stop';
  readonly weight?: 'fine' | 'heavy';
  /** Draws its shape here and there along it. */
  readonly marked?: boolean;
  /** Written beside the end of it that is farther right. */
  readonly endName?: string;
}

const MARKS_ALONG = 5;

export interface Inner {
  readonly width: number;
  readonly height: number;
}

const finite = ([across, down]: PlotPoint) => Number.isFinite(across) && Number.isFinite(down);

export function curvePath({ points }: PlotCurve, x: PlotScale, y: PlotScale): string {
  return (
    line<PlotPoint>()
      .defined(finite)
      .x((point) => x(point[0]))
      .y((point) => y(point[1]))
      .digits(1)(points as PlotPoint[]) ?? ''
  );
}

export function inside(point: PlotPoint, x: PlotScale, y: PlotScale, inner: Inner): boolean {
  const [px, py] = [x(point[0]), y(point[1])];
  return px >= -0.5 && px <= inner.width + 0.5 && py >= -0.5 && py <= inner.height + 0.5;
}

export function marksAlong({ points, look }: PlotCurve, x: PlotScale, y: PlotScale, inner: Inner): PlotPoint[] {
  const seen = points.filter((point) => finite(point) && inside(point, x, y, inner));
  const step = seen.length / MARKS_ALONG;
  // Curves close together have their marks at different places.
  return Array.from({ length: MARKS_ALONG }, (_, i) => seen[Math.floor((i + 0.15 + (look % 5) * 0.16) * step)])
    .filter((point) => point !== undefined)
    .map(([across, down]) => [x(across), y(down)]);
}

export function endNames(curves: readonly PlotCurve[], x: PlotScale, y: PlotScale, inner: Inner) {
  const named = curves.flatMap(({ id, endName, points, tone }) => {
    const isSeen = (point: PlotPoint) => finite(point) && inside(point, x, y, inner);
    const [first, last] = [points.find(isSeen), points.findLast(isSeen)];
    if (endName === undefined || !first || !last) return [];
    const [atX, atY] = first[0] > last[0] ? first : last;
    return [{ id, text: endName, fromX: x(atX), ends: y(atY), tone }];
  });
  const fit = named.length * NAME_GAP <= inner.height ? named : apart(named);
  const places = spacedOut(
    fit.map(({ ends }) => ends),
    NAME_GAP,
    inner.height,
  );
  return fit.map((name, i) => ({ ...name, at: places[i]! }));
}

const NAME_GAP = 16;

/** Those whose ends stand apart, from the lowest upward: where curves bunch, one name stands for its neighbours. */
function apart<Named extends { readonly ends: number }>(named: readonly Named[]): Named[] {
  const kept: Named[] = [];
  for (const name of [...named].sort((one, other) => other.ends - one.ends))
    if (kept.length === 0 || kept.at(-1)!.ends - name.ends >= NAME_GAP) kept.push(name);
  return kept;
}

/** About as wide as a letter of a name is drawn. */
const LETTER = 6.9;

/** From the edge of the plot to where a name begins, and after it. */
const TIE = 20;
const MOST_FOR_NAMES = 0.32;

/** Room at the right for the longest name; a narrow plot has none to give, and its curves are named in its key. */
export function roomForNames(curves: readonly PlotCurve[], width: number): number {
  const longest = Math.max(0, ...curves.map(({ endName = '' }) => endName.length));
  const room = Math.ceil(longest * LETTER) + TIE + 8;
  return room <= CROSS_MARGIN.right || room <= width * MOST_FOR_NAMES ? Math.max(20, room) : 0;
}
