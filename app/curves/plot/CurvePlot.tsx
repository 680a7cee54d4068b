'use client';

import { area } from 'd3';
import type { PointerEvent } from 'react';
import { CrossAxes, CROSS_MARGIN } from '../../pictures/axes/CrossAxes';
import { Clipped } from '../../pictures/axes/Clipped';
import { Plate } from '../../pictures/axes/Plate';
import type { PlotAxis, PlotScale } from '../../pictures/axes/plot-axis';
import { placeIn } from '../../pictures/hand/use-pointed';
import { dashOf, shapeOf } from './curve-looks';
import styles from './plot.module.css';
import {
  type PlotPoint,
  type PlotCurve,
  type Inner,
  curvePath,
  inside,
  marksAlong,
  endNames,
  roomForNames,
} from './plot-curve';

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
