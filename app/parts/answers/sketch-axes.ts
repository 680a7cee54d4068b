import { answerUnit } from '@/lib/lesson/typed-answer';
import type { DrawAsked, Sketch } from '@/lib/lesson/questions/sketch';
import { printClock } from '@/lib/quantity/duration';
import type { UnitSystem } from '@/lib/quantity/unit-system';

/** The paper a curve is drawn on, in picture units. */
export const PAD = { width: 720, height: 340, left: 92, right: 16, top: 16, bottom: 48 } as const;

/** Steps along time in which a hand sets a value. */
export const COLUMNS = 161;

export interface SketchAxes {
  readonly x: (timeS: number) => number;
  readonly y: (value: number) => number;
  readonly timeAt: (x: number) => number;
  readonly valueAt: (y: number) => number;
  readonly columnS: (column: number) => number;
  readonly timeTicks: readonly { readonly timeS: number; readonly label: string }[];
  /** What the times are counted from, where that is not the start of the dive; they are whole minutes then. */
  readonly timesSince: string | undefined;
  readonly valueTicks: readonly { readonly value: number; readonly label: string }[];
  readonly unit: string;
}

/** Time to the right; depths downward, everything else upward. */
export function sketchAxes({ fromS, toS, upTo, dimension, zeroS, since }: DrawAsked, system: UnitSystem): SketchAxes {
  const inner = { width: PAD.width - PAD.left - PAD.right, height: PAD.height - PAD.top - PAD.bottom };
  const down = dimension === 'depth';
  const { unit, size } = answerUnit(dimension, system);
  const x = (timeS: number) => PAD.left + ((timeS - fromS) / (toS - fromS)) * inner.width;
  const y = (value: number) => PAD.top + (down ? value / upTo : 1 - value / upTo) * inner.height;
  const shareDown = (py: number) => Math.min(Math.max(0, (py - PAD.top) / inner.height), 1);
  return {
    x,
    y,
    timeAt: (px) =>
      fromS + (Math.min(Math.max(PAD.left, px), PAD.width - PAD.right) - PAD.left) * ((toS - fromS) / inner.width),
    valueAt: (py) => (down ? shareDown(py) : 1 - shareDown(py)) * upTo,
    columnS: (column) => fromS + ((toS - fromS) * column) / (COLUMNS - 1),
    timeTicks: steps((fromS - zeroS) / 60, (toS - zeroS) / 60, 6).map((minutes) => ({
      timeS: zeroS + minutes * 60,
      label: since === undefined ? printClock(minutes * 60) : String(Math.round(minutes * 10) / 10),
    })),
    timesSince: since,
    valueTicks: steps(0, upTo / size, 5).map((shown) => ({
      value: shown * size,
      label: String(Math.round(shown * 1000) / 1000),
    })),
    unit,
  };
}

/** Round numbers between two ends, about so many. */
function steps(from: number, to: number, about: number): number[] {
  const rough = (to - from) / about;
  const power = 10 ** Math.floor(Math.log10(rough));
  const step = [1, 2, 5, 10].map((times) => times * power).find((one) => one >= rough) ?? power * 10;
  const ticks: number[] = [];
  for (let at = Math.ceil(from / step - 1e-9) * step; at <= to + 1e-9; at += step) ticks.push(at);
  return ticks;
}

export function sketchPath(sketch: Sketch, { x, y }: SketchAxes): string {
  return sketch
    .map(({ timeS, value }, index) => `${index === 0 ? 'M' : 'L'}${x(timeS).toFixed(1)},${y(value).toFixed(1)}`)
    .join('');
}
