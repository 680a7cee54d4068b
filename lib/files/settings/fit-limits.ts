import type { Figures } from '../../ascent/figures';
import type { GradientFactors } from '../../dive/dive';
import type { Comparison } from './readings-compared';
import { believedTimeline, misfitOf, type Misfit, type Site, type UnitSettings } from './unit-fit';

/** Settings of a unit and how well they explain what it showed. */
export interface Fit {
  readonly settings: UnitSettings;
  readonly misfit: Misfit;
}

/** A pair of gradient factors, percent. */
export interface LimitPair {
  readonly low: number;
  readonly high: number;
}

/** Gradient factors are searched in whole percent, between these. */
export const LOWEST = 10;
export const HIGHEST = 100;
/** Rough limits to rank sites by, percent. */
const ROUGH_HIGHS = [40, 50, 60, 70, 80, 90, 100];
const ROUGH_SHARES = [0.3, 0.65, 1];
const COARSE = 10;
const ROWS = 5;
const FINE = 2;
/** A set of more pairs than this is as good as all of them. */
const MOST_PAIRS = 2500;

/** Tries gradient factors for one site; a pair is worked out once. */
export class LimitsTried {
  private readonly known = new Map<number, Misfit>();
  private readonly timeline;
  private figures: Figures | undefined;
  private bestPair: LimitPair = { low: HIGHEST, high: HIGHEST };
  private bestMisfit: Misfit | undefined;

  constructor(
    private readonly comparison: Comparison,
    readonly site: Site,
  ) {
    this.timeline = believedTimeline(comparison, site);
  }

  /** The loss of a pair, percent. Where the low one leaves no trace it is taken to be the high one. */
  loss(low: number, high: number): number {
    const used = this.comparison.sawStops ? low : high;
    if (high > HIGHEST || used < LOWEST || used > high) return Infinity;
    const key = used * 1000 + high;
    let misfit = this.known.get(key);
    if (!misfit) {
      const made = misfitOf(this.comparison, this.timeline, pairOf(used, high), this.figures);
      this.figures = made.figures;
      misfit = made.misfit;
      this.known.set(key, misfit);
      if (!this.bestMisfit || misfit.loss < this.bestMisfit.loss) {
        this.bestMisfit = misfit;
        this.bestPair = { low: used, high };
      }
    }
    return misfit.loss;
  }

  best(): Fit {
    const { low, high } = this.bestPair;
    return { settings: { ...this.site, gradientFactors: pairOf(low, high) }, misfit: this.bestMisfit! };
  }

  /** A quick look at how well the site could do. */
  rough(): Fit {
    for (const high of ROUGH_HIGHS) for (const share of ROUGH_SHARES) this.loss(Math.round(high * share), high);
    return this.best();
  }

  /** The best pair to the whole percent: steps that shorten, and between them a look along the low one, where valleys are narrow. */
  closer(): Fit {
    this.descend([5, 2, 1]);
    const { high } = this.bestPair;
    for (let low = LOWEST; this.comparison.sawStops && low <= high; low += FINE) this.loss(low, high);
    this.descend([2, 1]);
    return this.best();
  }

  private descend(steps: readonly number[]): void {
    for (const step of steps) {
      for (let before = NaN; this.bestMisfit!.loss !== before;) {
        before = this.bestMisfit!.loss;
        const { low, high } = this.bestPair;
        for (const [dLow, dHigh] of DIRECTIONS) this.loss(low + dLow * step, high + dHigh * step);
      }
    }
  }

  /** Looks along every low factor in turn: along it valleys are narrow, for stops come every few metres. */
  rows(): void {
    this.rough();
    if (!this.comparison.sawStops) for (let high = LOWEST; high <= HIGHEST; high += 1) this.loss(high, high);
    else
      for (let low = LOWEST; low <= HIGHEST; low += ROWS) {
        let best = low;
        for (let high = low; high <= HIGHEST; high += COARSE)
          if (this.loss(low, high) < this.loss(low, best)) best = high;
        for (const step of [5, 2, 1]) {
          for (let moved = true; moved;) {
            moved = false;
            for (const next of [best - step, best + step])
              if (this.loss(low, next) < this.loss(low, best)) {
                best = next;
                moved = true;
              }
          }
        }
      }
    this.closer();
  }

  /** Every pair whose loss is within `most`, to the whole percent, as far as they hang together with one that was tried. */
  within(most: number): LimitPair[] {
    const found = new Map<number, LimitPair>();
    const open = [...this.known]
      .filter(([, misfit]) => misfit.loss <= most)
      .map(([key]) => ({ low: Math.floor(key / 1000), high: key % 1000 }));
    for (let next = open.pop(); next && found.size < MOST_PAIRS; next = open.pop()) {
      const { low, high } = next;
      const key = low * 1000 + high;
      if (found.has(key) || !(this.loss(low, high) <= most)) continue;
      found.set(key, next);
      const ways = this.comparison.sawStops ? NEIGHBOURS : ALONG_HIGH;
      for (const [dLow, dHigh] of ways) open.push({ low: low + dLow, high: high + dHigh });
    }
    return [...found.values()].sort((one, other) => one.low - other.low || one.high - other.high);
  }
}

function pairOf(low: number, high: number): GradientFactors {
  return { low: low / 100, high: high / 100 };
}

const ALONG_HIGH = [
  [1, 1],
  [-1, -1],
] as const;
const NEIGHBOURS = [[0, 1], [0, -1], [1, 0], [-1, 0], ...ALONG_HIGH, [1, -1], [-1, 1]] as const;
const DIRECTIONS = [...NEIGHBOURS, [2, 1], [-2, -1], [1, 2], [-1, -2]] as const;
