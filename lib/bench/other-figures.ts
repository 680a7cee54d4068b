import type { UnitSystem } from '../quantity/unit-system';
import { printStopDepth } from '../quantity/depth';
import type { Reading, Readings } from './bench-settings';
import { sayDepthBand, sayHours, sayNoStop } from './bench-words';
import type { Expected } from './expected';

/** Kinds of figure a checkpoint may ask for besides the depth. */
const OTHER_FIGURES = ['noStopMin', 'stopM', 'rateAlarm', 'safetyStop', 'noFlyH'] as const;
export type OtherFigure = (typeof OTHER_FIGURES)[number];

/** Which of them a checkpoint asks to have read. */
export function askedAt(expected: Expected): OtherFigure[] {
  return OTHER_FIGURES.filter((figure) => expected[figure] !== null);
}

/** A figure that a correct unit under the limits in use would not have shown. */
export interface OddFigure {
  readonly checkpoint: string;
  readonly figure: OtherFigure;
  readonly text: string;
}

/** A stop may be told as a ceiling or on a coarser scale: so much deeper still counts as the same, m. */
const STOP_SCALE_M = 3;

/** The figures read that lie outside what a correct unit shows. */
export function oddFigures(expected: readonly Expected[], readings: Readings, system: UnitSystem): OddFigure[] {
  return expected.flatMap((one) => {
    const reading = readings[one.checkpoint.name] ?? {};
    return OTHER_FIGURES.flatMap((figure) => {
      const text = odd(figure, one, reading, system);
      return text === undefined ? [] : [{ checkpoint: one.checkpoint.name, figure, text }];
    });
  });
}

function odd(figure: OtherFigure, expected: Expected, reading: Reading, system: UnitSystem): string | undefined {
  const at = `at “${expected.checkpoint.name}”`;
  switch (figure) {
    case 'noStopMin': {
      const { noStopMin: band } = expected;
      if (!band || reading.noStopMin === undefined) return undefined;
      const shown = reading.noStopMin === 'over' ? Infinity : reading.noStopMin;
      if (shown >= band.from && shown <= band.to) return undefined;
      return `a no-stop time of ${reading.noStopMin === 'over' ? 'more than 99' : shown} min ${at}, where ${sayNoStop(band)} was to be expected`;
    }
    case 'stopM': {
      const { stopM: band } = expected;
      if (!band || reading.stopM === undefined) return undefined;
      const low = Math.max(0, (expected.ceilingM?.from ?? band.from) - 1e-9);
      if (reading.stopM >= Math.min(low, band.from) && reading.stopM <= band.to + STOP_SCALE_M) return undefined;
      return `${reading.stopM > 0 ? `a stop at ${printStopDepth(reading.stopM, system)}` : 'no stop'} ${at}, where ${sayDepthBand(band, system)} was to be expected`;
    }
    case 'rateAlarm':
      if (expected.rateAlarm === null || reading.rateAlarm === undefined || reading.rateAlarm === expected.rateAlarm)
        return undefined;
      return reading.rateAlarm
        ? `a rate alarm on the way to “${expected.checkpoint.name}”, where none was to be expected`
        : `no rate alarm on the way to “${expected.checkpoint.name}”, where one was to be expected`;
    case 'safetyStop':
      if (expected.safetyStop === null || reading.safetyStop === undefined || expected.safetyStop === 'done')
        return undefined;
      return reading.safetyStop ? undefined : `no safety stop ${at}, where one was to be expected`;
    case 'noFlyH': {
      const { noFlyH: band } = expected;
      if (!band || reading.noFlyH === undefined || reading.noFlyH >= Math.floor(band.from)) return undefined;
      return `${reading.noFlyH} h without flying ${at}, where ${sayHours(band)} was to be expected`;
    }
  }
}
