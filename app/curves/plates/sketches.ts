import { ascentRateCurve } from '@/lib/curves/ascent-rate-curve';
import { bottomOf } from '@/lib/curves/bottom-phase';
import { curveSite, depthLadder, rested } from '@/lib/curves/curve-site';
import { gradientFactorGrid } from '@/lib/curves/gradient-factor-sweep';
import { stepBetweenDepths, stepResponses } from '@/lib/curves/half-times';
import { noStopBand } from '@/lib/curves/how-sure';
import { limitLines } from '@/lib/curves/limit-lines';
import { modelNoStopCurve } from '@/lib/curves/model-curves';
import { noStopCurve } from '@/lib/curves/no-stop-curve';
import { USUAL_VARIATION } from '@/lib/curves/variation';
import { defaultSettings } from '@/lib/dive/default-settings';
import { siteOf } from '@/lib/dive/timeline';
import { AIR } from '@/lib/physics/gas';
import { LIMIT_MODELS } from '@/lib/tissue/models/all';
import { valuesOf, type WrittenChoices } from '../chosen/atlas-store';
import { DOWN_M_MIN, wishConditions } from '../chosen/curve-wish';
import { ASCENT_RATE, GRADIENT_FACTORS, HALF_TIMES, HOW_SURE, LIMITS, MODELS } from '../chosen/later-choices';
import { NO_STOP, type PlateId } from '../chosen/plate-choices';

type Point = readonly [number, number];

/** What a plate looks like from afar, in the units of its axes. */
export interface Sketch {
  readonly across: readonly [number, number];
  readonly down: readonly [number, number];
  readonly grows: 'up' | 'down';
  readonly lines?: readonly { readonly points: readonly Point[]; readonly tone: 'ink' | 'gas' | 'stop' }[];
  /** One edge, the other, and where along the axis at the side. */
  readonly band?: readonly (readonly [low: number, high: number, at: number])[];
  readonly cells?: readonly { readonly from: Point; readonly to: Point; readonly share: number }[];
}

const LADDER = depthLadder(9, 60, 3);
const DEPTHS = { across: [0, 100], down: [6, 60], grows: 'down' } as const;
const SITE = curveSite(defaultSettings());
const byDepth = (minutes: ArrayLike<number>): Point[] =>
  Array.from(LADDER, (depthM, i) => [minutes[i]!, depthM] as const);

/** Each plate in a few points, worked out by the engine from what is chosen on it. */
export const SKETCHES: Readonly<Record<PlateId, (written: WrittenChoices) => Sketch>> = {
  'no-stop': (written) => ({
    ...DEPTHS,
    lines: valuesOf(NO_STOP, written).wishes.map((wish) => ({
      points: byDepth(noStopCurve(wishConditions(wish), LADDER).minutes),
      tone: 'ink',
    })),
  }),
  limits(written) {
    const { factors, helium, anchor, compartments } = valuesOf(LIMITS, written);
    const lines = limitLines({
      site: SITE,
      gradientFactors: factors,
      heliumShare: Number(helium),
      anchorM: anchor,
      deepestM: 30,
    }).filter(({ compartment }) => compartments.includes(compartment));
    const most = lines.reduce((top, { mLine }) => Math.max(top, mLine[1].tensionBar), 3);
    return {
      across: [0, SITE.surfaceBar + 30 * SITE.barPerMetre],
      down: [0, most],
      grows: 'up',
      lines: [
        {
          points: [
            [0, 0],
            [5, 5],
          ],
          tone: 'ink',
        },
        ...lines.map(({ mLine }) => ({
          points: mLine.map(({ ambientBar, tensionBar }) => [ambientBar, tensionBar] as const),
          tone: 'stop' as const,
        })),
      ],
    };
  },
  'half-times'(written) {
    const { from, to } = valuesOf(HALF_TIMES, written);
    const { startBar, breathedBar } = stepBetweenDepths(SITE, AIR, from, to);
    const minutes = Array.from({ length: 25 }, (_, i) => 240 * (i / 24) ** 2);
    const [low, high] = [Math.min(startBar, breathedBar), Math.max(startBar, breathedBar)];
    return {
      across: [0, 240],
      down: [low, high + 0.05],
      grows: 'up',
      lines: stepResponses(SITE.compartments, 'nitrogen', startBar, breathedBar, minutes).map(({ tensionBar }) => ({
        points: minutes.map((at, i) => [at, tensionBar[i]!] as const),
        tone: 'gas',
      })),
    };
  },
  'ascent-rate'(written) {
    const { depth, times, gas, factors } = valuesOf(ASCENT_RATE, written);
    const rates = [1, 3, 6, 9, 15, 22, 30];
    const settings = { ...defaultSettings(), gas, gradientFactors: factors };
    const all = times.map((minutes) => {
      const { site, end } = bottomOf({ settings, depthM: depth, minutes, descentMMin: DOWN_M_MIN });
      return ascentRateCurve(settings, site, end, rates).map(({ direct }) => direct.surfacingSupersaturation);
    });
    return {
      across: [0, 30],
      down: [0, Math.max(1.1, ...all.flat()) * 1.05],
      grows: 'up',
      lines: [
        {
          points: [
            [0, 1],
            [30, 1],
          ],
          tone: 'stop',
        },
        ...all.map((shares) => ({ points: rates.map((rate, i) => [rate, shares[i]!] as const), tone: 'gas' as const })),
      ],
    };
  },
  'gradient-factors'(written) {
    const { depth, time, gas, figure } = valuesOf(GRADIENT_FACTORS, written);
    const factors = [0.1, 0.25, 0.4, 0.55, 0.7, 0.85, 1];
    const bottom = {
      settings: { ...defaultSettings(), gas },
      depthM: depth,
      minutes: time / 60,
      descentMMin: DOWN_M_MIN,
    };
    const { values } = gradientFactorGrid({ bottom, figure, lows: factors, highs: factors });
    const most = Math.max(...values.filter(Number.isFinite));
    const half = 0.075;
    return {
      across: [0.1 - half, 1 + half],
      down: [0.1 - half, 1 + half],
      grows: 'up',
      cells: Array.from(values, (minutes, i) => {
        const [low, high] = [factors[i % factors.length]!, factors[Math.floor(i / factors.length)]!];
        return {
          from: [low - half, high - half] as const,
          to: [low + half, high + half] as const,
          share: Number.isFinite(minutes) && most > 0 ? 0.08 + (0.55 * minutes) / most : 0,
        };
      }),
    };
  },
  models(written) {
    const { off } = valuesOf(MODELS, written);
    const site = siteOf({ settings: defaultSettings(), steps: [], lines: [] });
    return {
      ...DEPTHS,
      lines: LIMIT_MODELS.filter(({ id }) => !off.includes(id)).map((model) => ({
        points: byDepth(modelNoStopCurve(model, site, LADDER).minutes),
        tone: 'ink',
      })),
    };
  },
  'how-sure'(written) {
    const { gas, factors, halfTimes, limits, gauge, start } = valuesOf(HOW_SURE, written);
    const settings = { ...defaultSettings(), gas, gradientFactors: factors };
    const { low, middle, high } = noStopBand(
      { site: curveSite(settings), tissues: rested(settings), gas, gf: factors.high },
      LADDER,
      { ...USUAL_VARIATION, halfTimes, limits, depthM: gauge, start, samples: 0 },
    );
    return {
      ...DEPTHS,
      band: Array.from(LADDER, (depthM, i) => [low[i]!, high[i]!, depthM] as const),
      lines: [{ points: byDepth(middle), tone: 'ink' }],
    };
  },
};
