import { COMPARTMENTS, type Compartments } from '../tissue/coefficients';
import { toleratedAmbientBar } from '../tissue/limit';
import { rootBetween } from './root';

/** The pressures of both inert gases in the lungs at the two ends of a path, bar; in between they change evenly. */
export interface BreathedAlong {
  readonly nitrogenStartBar: number;
  readonly nitrogenEndBar: number;
  readonly heliumStartBar: number;
  readonly heliumEndBar: number;
}

/** With helium turns are looked for in pieces, the first so long, min; later ones grow, since everything slows down. */
const FIRST_PIECE_MIN = 0.25;

/**
 * What the sixteen compartments do along a stretch in which the depth, and so what is breathed, changes evenly or not at
 * all. By Schreiner's solution a tension is A + B·t + C·e^(−k·t), so that it turns at most once; with both gases the
 * limit moves with the mixture, and turns are searched for. Times in minutes from the start of the path.
 */
export class GasPath {
  private readonly nitrogenBar = new Float64Array(COMPARTMENTS);
  private readonly heliumBar = new Float64Array(COMPARTMENTS);
  /** Bounds of each compartment along this path, once asked for: `most` is NaN until then. */
  private readonly most = new Float64Array(COMPARTMENTS);
  private readonly least = new Float64Array(COMPARTMENTS);
  /** The coefficients under which it tolerates least and most, whatever it holds on the way. */
  private readonly strictA = new Float64Array(COMPARTMENTS);
  private readonly strictB = new Float64Array(COMPARTMENTS);
  private readonly mildA = new Float64Array(COMPARTMENTS);
  private readonly mildB = new Float64Array(COMPARTMENTS);
  private nitrogenStartBar = 0;
  private heliumStartBar = 0;
  private nitrogenPerMin = 0;
  private heliumPerMin = 0;
  private anyHelium = false;
  minutes = 0;

  constructor(
    private readonly compartments: Compartments,
    private readonly surfaceBar: number,
  ) {}

  /** Begins a path: sixteen tensions of each gas, `stride` apart from `at` on (helium's `heliumAfter` later), bar. */
  begin(
    nitrogenBar: Float64Array,
    heliumBar: Float64Array,
    at: number,
    stride: number,
    along: BreathedAlong,
    minutes: number,
    heliumAfter = 0,
  ): void {
    const { nitrogenStartBar, nitrogenEndBar, heliumStartBar, heliumEndBar } = along;
    this.minutes = minutes;
    this.nitrogenStartBar = nitrogenStartBar;
    this.heliumStartBar = heliumStartBar;
    this.nitrogenPerMin = minutes > 0 ? (nitrogenEndBar - nitrogenStartBar) / minutes : 0;
    this.heliumPerMin = minutes > 0 ? (heliumEndBar - heliumStartBar) / minutes : 0;
    this.anyHelium = heliumStartBar > 0 || heliumEndBar > 0;
    this.most.fill(NaN);
    for (let c = 0; c < COMPARTMENTS; c += 1) {
      this.nitrogenBar[c] = nitrogenBar[at + stride * c]!;
      const helium = heliumBar[at + heliumAfter + stride * c]!;
      this.heliumBar[c] = helium;
      if (helium > 0) this.anyHelium = true;
    }
  }

  nitrogenAt(c: number, minutes: number): number {
    const k = this.compartments.nitrogenK[c]!;
    return tensionAfter(this.nitrogenBar[c]!, this.nitrogenStartBar, this.nitrogenPerMin, k, minutes);
  }

  heliumAt(c: number, minutes: number): number {
    if (!this.anyHelium) return 0;
    const k = this.compartments.heliumK[c]!;
    return tensionAfter(this.heliumBar[c]!, this.heliumStartBar, this.heliumPerMin, k, minutes);
  }

  /** How far a compartment is over what it tolerates under `gf` at an ambient pressure, bar. */
  overBar(c: number, minutes: number, gf: number, ambientBar: number): number {
    const n = this.nitrogenAt(c, minutes);
    const h = this.heliumAt(c, minutes);
    const { nitrogenA, nitrogenB, heliumA, heliumB } = this.compartments;
    const inertBar = n + h;
    const a = h === 0 ? nitrogenA[c]! : (nitrogenA[c]! * n + heliumA[c]! * h) / inertBar;
    const b = h === 0 ? nitrogenB[c]! : (nitrogenB[c]! * n + heliumB[c]! * h) / inertBar;
    return inertBar - ambientBar - gf * (a + ambientBar / b - ambientBar);
  }

  /** How far below the surface the lowest ambient pressure is that a compartment tolerates under `gf`, bar; it may be negative. */
  toleratedBar(c: number, minutes: number, gf: number): number {
    const n = this.nitrogenAt(c, minutes);
    const h = this.heliumAt(c, minutes);
    const { nitrogenA, nitrogenB, heliumA, heliumB } = this.compartments;
    const inertBar = n + h;
    const a = h === 0 ? nitrogenA[c]! : (nitrogenA[c]! * n + heliumA[c]! * h) / inertBar;
    const b = h === 0 ? nitrogenB[c]! : (nitrogenB[c]! * n + heliumB[c]! * h) / inertBar;
    return toleratedAmbientBar(inertBar, a, b, gf) - this.surfaceBar;
  }

  /** The ceiling under one gradient factor at a moment, bar below the surface; 0 for none. */
  ceilingBar(minutes: number, gf: number): number {
    let deepestBar = 0;
    for (let c = 0; c < COMPARTMENTS; c += 1) {
      const own = this.toleratedBar(c, minutes, gf);
      if (own > deepestBar) deepestBar = own;
    }
    return deepestBar;
  }

  /** Whether any compartment is over the limit at the surface under `gf`. */
  isOver(minutes: number, gf: number): boolean {
    for (let c = 0; c < COMPARTMENTS; c += 1) if (this.overBar(c, minutes, gf, this.surfaceBar) > 0) return true;
    return false;
  }

  /** A bound on what a compartment is over the surface's limit under `gf`, anywhere along the path, bar. */
  mostOverBar(c: number, gf: number): number {
    return this.mostBar(c) - this.leastLimitBar(c, gf, this.surfaceBar);
  }

  /** The same from the other side: it is over by this much at least, all along. */
  leastOverBar(c: number, gf: number): number {
    this.findBounds(c);
    const { surfaceBar } = this;
    return this.least[c]! - surfaceBar - gf * (this.mildA[c]! + surfaceBar / this.mildB[c]! - surfaceBar);
  }

  /** A bound on how far below the surface a compartment's tolerated pressure under `gf` lies anywhere along the path, bar. */
  mostToleratedBar(c: number, gf: number): number {
    const most = this.mostBar(c);
    return toleratedAmbientBar(most, this.strictA[c]!, this.strictB[c]!, gf) - this.surfaceBar;
  }

  /** A bound on what a compartment holds anywhere along the path, bar. */
  mostBar(c: number): number {
    this.findBounds(c);
    return this.most[c]!;
  }

  /** A bound on what a compartment tolerates under `gf` at an ambient pressure, whatever it holds on the way, bar. */
  leastLimitBar(c: number, gf: number, ambientBar: number): number {
    this.findBounds(c);
    return ambientBar + gf * (this.strictA[c]! + ambientBar / this.strictB[c]! - ambientBar);
  }

  private findBounds(c: number): void {
    if (!Number.isNaN(this.most[c]!)) return;
    const { minutes, nitrogenStartBar, nitrogenPerMin, heliumStartBar, heliumPerMin } = this;
    const { nitrogenA, nitrogenB, heliumA, heliumB } = this.compartments;
    const n = this.nitrogenBar[c]!;
    const nEnd = this.nitrogenAt(c, minutes);
    const nitrogenEndBar = nitrogenStartBar + nitrogenPerMin * minutes;
    const nMost = mostOf(n, nEnd, nitrogenStartBar, nitrogenEndBar);
    const nLeast = leastOf(n, nEnd, nitrogenStartBar, nitrogenEndBar);
    let [hMost, hLeast] = [0, 0];
    if (this.anyHelium) {
      const h = this.heliumBar[c]!;
      const hEnd = this.heliumAt(c, minutes);
      const heliumEndBar = heliumStartBar + heliumPerMin * minutes;
      hMost = mostOf(h, hEnd, heliumStartBar, heliumEndBar);
      hLeast = Math.max(0, leastOf(h, hEnd, heliumStartBar, heliumEndBar));
    }
    this.most[c] = nMost + hMost;
    this.least[c] = nLeast + hLeast;
    // a and b go from those of nitrogen to those of helium with helium's share: its bounds give theirs.
    const shareLeast = hLeast > 0 ? hLeast / (hLeast + nMost) : 0;
    const shareMost = hMost > 0 ? hMost / (hMost + nLeast) : 0;
    const aRise = heliumA[c]! - nitrogenA[c]!;
    const bRise = heliumB[c]! - nitrogenB[c]!;
    const aLeastHelium = nitrogenA[c]! + aRise * shareLeast;
    const aMostHelium = nitrogenA[c]! + aRise * shareMost;
    const bLeastHelium = nitrogenB[c]! + bRise * shareLeast;
    const bMostHelium = nitrogenB[c]! + bRise * shareMost;
    this.strictA[c] = Math.min(aLeastHelium, aMostHelium);
    this.strictB[c] = Math.max(bLeastHelium, bMostHelium);
    this.mildA[c] = Math.max(aLeastHelium, aMostHelium);
    this.mildB[c] = Math.min(bLeastHelium, bMostHelium);
  }

  /** Moments at which a compartment's tolerated pressure under `gf` turns from rising to falling or back. */
  turns(c: number, gf: number): number[] {
    return this.turnsOf(c, (minutes) => this.toleratedPerMin(c, minutes, gf));
  }

  /** Moments at which a compartment passes its limit at the surface under `gf`, in either direction. */
  crossings(c: number, gf: number): number[] {
    const over = (minutes: number) => this.overBar(c, minutes, gf, this.surfaceBar);
    const marks = [...this.turnsOf(c, (minutes) => this.overPerMin(c, minutes, gf)), this.minutes];
    const found: number[] = [];
    let from = 0;
    let atFrom = over(0);
    for (const to of marks) {
      const atTo = over(to);
      if (atFrom > 0 !== atTo > 0) found.push(rootBetween(over, from, to, atFrom, atTo));
      [from, atFrom] = [to, atTo];
    }
    return found;
  }

  /** Moments at which a rate passes 0. */
  private turnsOf(c: number, perMin: (minutes: number) => number): number[] {
    if (!this.anyHelium) {
      const turn = this.nitrogenTurn(c);
      return turn === undefined ? [] : [turn];
    }
    const found: number[] = [];
    let from = 0;
    let atFrom = perMin(0);
    let pieceMin = FIRST_PIECE_MIN;
    while (from < this.minutes) {
      const to = this.minutes - from < 1.5 * pieceMin ? this.minutes : from + pieceMin;
      const atTo = perMin(to);
      if (atFrom > 0 !== atTo > 0 && atFrom !== 0) found.push(rootBetween(perMin, from, to, atFrom, atTo));
      [from, atFrom] = [to, atTo];
      pieceMin = Math.max(FIRST_PIECE_MIN, from / 8);
    }
    return found;
  }

  /** How fast the tolerated pressure of a compartment under `gf` changes, bar/min: of (P − a·gf)/(gf/b − gf + 1). */
  private toleratedPerMin(c: number, minutes: number, gf: number): number {
    const { inertBar, inertPerMin, a, aPerMin, b, bPerMin } = this.mixtureAt(c, minutes);
    const divisor = gf / b - gf + 1;
    return (inertPerMin - aPerMin * gf) / divisor + ((inertBar - a * gf) * gf * bPerMin) / (b * b * divisor * divisor);
  }

  /** How fast what a compartment is over the surface's limit under `gf` changes, bar/min: of P − p − gf·(a + p/b − p). */
  private overPerMin(c: number, minutes: number, gf: number): number {
    const { inertPerMin, aPerMin, b, bPerMin } = this.mixtureAt(c, minutes);
    return inertPerMin - gf * (aPerMin - (this.surfaceBar * bPerMin) / (b * b));
  }

  /** What a compartment holds, its a and b averaged by its gases, and how fast all three change. */
  private mixtureAt(c: number, minutes: number) {
    const { nitrogenK, heliumK, nitrogenA, nitrogenB, heliumA, heliumB } = this.compartments;
    const n = this.nitrogenAt(c, minutes);
    const h = this.heliumAt(c, minutes);
    const nPerMin = nitrogenK[c]! * (this.nitrogenStartBar + this.nitrogenPerMin * minutes - n);
    const hPerMin = heliumK[c]! * (this.heliumStartBar + this.heliumPerMin * minutes - h);
    const inertBar = n + h;
    const inertPerMin = nPerMin + hPerMin;
    const a = (nitrogenA[c]! * n + heliumA[c]! * h) / inertBar;
    const b = (nitrogenB[c]! * n + heliumB[c]! * h) / inertBar;
    return {
      inertBar,
      inertPerMin,
      a,
      aPerMin: (nitrogenA[c]! * nPerMin + heliumA[c]! * hPerMin - a * inertPerMin) / inertBar,
      b,
      bPerMin: (nitrogenB[c]! * nPerMin + heliumB[c]! * hPerMin - b * inertPerMin) / inertBar,
    };
  }

  /** When a compartment holds what is breathed, which is where it turns: t = ln(1 + g·k/R)/k for a gap g = P − P_alv and a rate R. */
  private nitrogenTurn(c: number): number | undefined {
    const rate = this.nitrogenPerMin;
    if (rate === 0) return undefined;
    const k = this.compartments.nitrogenK[c]!;
    const share = ((this.nitrogenBar[c]! - this.nitrogenStartBar) * k) / rate;
    if (!(share > 0)) return undefined;
    const minutes = Math.log1p(share) / k;
    return minutes < this.minutes ? minutes : undefined;
  }
}

/** A bound on a tension between two moments, bar: one that turns on the way does so where it meets what is breathed. */
export function mostOf(beforeBar: number, nowBar: number, breathedBeforeBar: number, breathedNowBar: number): number {
  return beforeBar < breathedBeforeBar && nowBar > breathedNowBar ? breathedBeforeBar : Math.max(beforeBar, nowBar);
}

/** The same from the other side. */
export function leastOf(beforeBar: number, nowBar: number, breathedBeforeBar: number, breathedNowBar: number): number {
  return beforeBar > breathedBeforeBar && nowBar < breathedNowBar ? breathedBeforeBar : Math.min(beforeBar, nowBar);
}

/** Schreiner's solution, at a rate of 0 Haldane's: tension after some minutes, bar. */
function tensionAfter(tensionBar: number, breathedBar: number, rate: number, k: number, minutes: number): number {
  const gone = Math.expm1(-k * minutes);
  return tensionBar + (tensionBar - breathedBar) * gone + rate * (minutes + gone / k);
}
