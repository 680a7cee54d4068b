'use client';

import { area, line } from 'd3';
import type { PointerEvent } from 'react';
import { CrossAxes, CROSS_MARGIN } from '../pictures/axes/CrossAxes';
import { Clipped } from '../pictures/axes/Clipped';
import { Plate } from '../pictures/axes/Plate';
import type { PlotAxis, PlotScale } from '../pictures/axes/plot-axis';
import { spacedOut } from '../pictures/axes/spaced-out';
import { placeIn } from '../pictures/hand/use-pointed';
import { dashOf, shapeOf } from './curve-looks';
import styles from './plot.module.css';

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

interface PlotBand {
  readonly id: string;
  /** One edge and the other, as many points each. */
  readonly low: readonly PlotPoint[];
  readonly high: readonly PlotPoint[];
  readonly tone?: 'ink' | 'stop';
}

interface PlotDot {
  readonly at: PlotPoint;
  readonly look: number;
  readonly open?: boolean;
}

/** A straight line to measure against, with its name. */
interface PlotRule {
  readonly along: 'across' | 'down';
  readonly at: number;
  readonly name: string;
  readonly tone?: 'ink' | 'stop';
}

interface PlotCursor {
  /** Which axis it moves along. */
  readonly along: 'across' | 'down';
  readonly at: number;
  /** Where it meets the curves. */
  readonly hits: readonly PlotDot[];
  /** Also where along the other axis the pointer is. */
  readonly onMove: (at: number, aside: number) => void;
}

interface CurvePlotProps {
  width: number;
  height: number;
  across: PlotAxis;
  down: PlotAxis;
  /** The axis at the side grows downward, as depth does, or upward, as pressure does. */
  grows?: 'up' | 'down';
  curves: readonly PlotCurve[];
  bands?: readonly PlotBand[];
  dots?: readonly PlotDot[];
  rules?: readonly PlotRule[];
  cursor?: PlotCursor;
}

const MARKS_ALONG = 5;

/** Curves over two axes, with a cursor that a pointer may press or drag. The words beside it speak for it. */
export function CurvePlot({
  width,
  height,
  across,
  down,
  grows = 'up',
  curves,
  bands = [],
  dots = [],
  rules = [],
  cursor,
}: CurvePlotProps) {
  const names = roomForNames(curves, width);
  const margin = { ...CROSS_MARGIN, right: names || 20 };
  const inner = { width: width - margin.left - margin.right, height: height - margin.top - margin.bottom };
  const x = across.scale([0, inner.width]);
  const y = down.scale(grows === 'up' ? [inner.height, 0] : [0, inner.height]);
  const named = names > 0 ? endNames(curves, x, y, inner) : [];
  const move = (event: PointerEvent<SVGSVGElement>) => {
    if (!cursor) return;
    const at = placeIn(event, margin, width);
    const scale = cursor.along === 'across' ? x : y;
    const [first, last] = scale.domain() as [number, number];
    const [along, aside] = cursor.along === 'across' ? [at.x, y.invert(at.y)] : [at.y, x.invert(at.x)];
    cursor.onMove(Math.min(Math.max(scale.invert(along), first), last), aside);
  };
  /** Whether a curve goes where the name of a line across would stand over it. */
  const ridden = (at: number) =>
    curves.some(({ points }) =>
      points.some(([along, aside]) => {
        const over = y(at) - y(aside);
        return over > 0 && over < 20 && x(along) > inner.width / 2;
      }),
    );
  return (
    <Plate
      width={width}
      height={height}
      margin={margin}
      className={styles.plot}
      onPointerDown={move}
      onPointerMove={(event) => event.buttons === 1 && move(event)}
    >
      <CrossAxes x={x} y={y} across={across} down={down} inner={inner} />
      <Clipped {...inner}>
        {bands.map((band) => (
          <path
            key={band.id}
            d={bandPath(band, x, y)}
            className={band.tone === 'stop' ? styles.stopBand : styles.band}
          />
        ))}
        {curves.map((curve) => (
          <path
            key={curve.id}
            d={curvePath(curve, x, y)}
            strokeDasharray={dashOf(curve.look)}
            className={`${styles.curve} ${styles[curve.tone ?? 'ink']} ${styles[curve.weight ?? 'usual']}`}
          />
        ))}
        {rules.map((rule) => (
          <line
            key={rule.name}
            {...ends(rule, x, y, inner)}
            className={rule.tone === 'stop' ? styles.stopRule : styles.rule}
          />
        ))}
      </Clipped>
      {rules.map((rule) => (
        <text
          key={rule.name}
          x={rule.along === 'down' ? inner.width - 4 : x(rule.at) + 5}
          y={rule.along === 'down' ? y(rule.at) + (ridden(rule.at) ? 15 : -5) : 12}
          textAnchor={rule.along === 'down' ? 'end' : 'start'}
          className={rule.tone === 'stop' ? styles.stopName : styles.name}
        >
          {rule.name}
        </text>
      ))}
      {curves
        .filter(({ marked }) => marked)
        .map((curve) =>
          marksAlong(curve, x, y, inner).map((at, i) => (
            <Mark key={`${curve.id}${i}`} at={at} look={curve.look} className={styles.mark} />
          )),
        )}
      {dots.map((dot, i) =>
        inside(dot.at, x, y, inner) ? (
          <Mark
            key={i}
            at={[x(dot.at[0]), y(dot.at[1])]}
            look={dot.look}
            className={dot.open ? styles.openDot : styles.mark}
          />
        ) : null,
      )}
      {named.map(({ id, text, fromX, ends: endsAt, at, tone }) => (
        <g key={id}>
          <path
            d={`M${fromX.toFixed(1)},${endsAt.toFixed(1)}L${inner.width + 15},${at.toFixed(1)}`}
            className={styles.lead}
          />
          <text x={inner.width + 18} y={at} dy="0.32em" className={tone === 'stop' ? styles.stopName : styles.endName}>
            {text}
          </text>
        </g>
      ))}
      {cursor && (
        <>
          <line {...ends({ along: cursor.along, at: cursor.at }, x, y, inner)} className={styles.cursor} />
          {cursor.hits.map((hit, i) =>
            inside(hit.at, x, y, inner) ? (
              <Mark key={i} at={[x(hit.at[0]), y(hit.at[1])]} look={hit.look} size={150} className={styles.hit} />
            ) : null,
          )}
        </>
      )}
    </Plate>
  );
}

interface Inner {
  readonly width: number;
  readonly height: number;
}

function Mark({
  at,
  look,
  size,
  className,
}: {
  at: PlotPoint;
  look: number;
  size?: number;
  className: string | undefined;
}) {
  return (
    <path
      d={shapeOf(look, size)}
      transform={`translate(${at[0].toFixed(1)},${at[1].toFixed(1)})`}
      className={className}
    />
  );
}

const finite = ([across, down]: PlotPoint) => Number.isFinite(across) && Number.isFinite(down);

function curvePath({ points }: PlotCurve, x: PlotScale, y: PlotScale): string {
  return (
    line<PlotPoint>()
      .defined(finite)
      .x((point) => x(point[0]))
      .y((point) => y(point[1]))
      .digits(1)(points as PlotPoint[]) ?? ''
  );
}

/** A band reaches to the far edge of the plot where one of its edges has no end. */
function bandPath({ low, high }: PlotBand, x: PlotScale, y: PlotScale): string {
  const farther = 10 * x.domain()[1]!;
  const held = (value: number) => (value === Infinity ? farther : value);
  return (
    area<number>()
      .x0((i) => x(held(low[i]![0])))
      .x1((i) => x(held(high[i]![0])))
      .y0((i) => y(low[i]![1]))
      .y1((i) => y(high[i]![1]))
      .digits(1)(low.map((_, i) => i)) ?? ''
  );
}

function ends({ along, at }: { along: 'across' | 'down'; at: number }, x: PlotScale, y: PlotScale, inner: Inner) {
  return along === 'across'
    ? { x1: x(at), x2: x(at), y1: 0, y2: inner.height }
    : { x1: 0, x2: inner.width, y1: y(at), y2: y(at) };
}

function inside(point: PlotPoint, x: PlotScale, y: PlotScale, inner: Inner): boolean {
  const [px, py] = [x(point[0]), y(point[1])];
  return px >= -0.5 && px <= inner.width + 0.5 && py >= -0.5 && py <= inner.height + 0.5;
}

function marksAlong({ points, look }: PlotCurve, x: PlotScale, y: PlotScale, inner: Inner): PlotPoint[] {
  const seen = points.filter((point) => finite(point) && inside(point, x, y, inner));
  const step = seen.length / MARKS_ALONG;
  // Curves close together have their marks at different places.
  return Array.from({ length: MARKS_ALONG }, (_, i) => seen[Math.floor((i + 0.15 + (look % 5) * 0.16) * step)])
    .filter((point) => point !== undefined)
    .map(([across, down]) => [x(across), y(down)]);
}

function endNames(curves: readonly PlotCurve[], x: PlotScale, y: PlotScale, inner: Inner) {
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
function roomForNames(curves: readonly PlotCurve[], width: number): number {
  const longest = Math.max(0, ...curves.map(({ endName = '' }) => endName.length));
  const room = Math.ceil(longest * LETTER) + TIE + 8;
  return room <= CROSS_MARGIN.right || room <= width * MOST_FOR_NAMES ? Math.max(20, room) : 0;
}
