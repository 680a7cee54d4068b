import { COMPARTMENTS, type Compartments } from '../tissue/coefficients';
import { toleratedAmbientBar } from '../tissue/limit';

/** The pressures of both inert gases in the lungs at the two ends of a path, bar; in between they change evenly. */
export interface BreathedAlong {
  readonly nitrogenStartBar: number;
  readonly nitrogenEndBar: number;
  readonly heliumStartBar: number;
  readonly heliumEndBar: number;
}

/** How closely a moment is found, min: the last digits of a double near an hour. */
const MOMENT_MIN = 1e-14;
const MOST_HALVINGS = 100;
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
  private along: BreathedAlong = { nitrogenStartBar: 0, nitrogenEndBar: 0, heliumStartBar: 0, heliumEndBar: 0 };
  private anyHelium = false;
  minutes = 0;

  constructor(
    private readonly compartments: Compartments,
    private readonly surfaceBar: number,
  ) {}

  /** Begins a path: sixteen tensions of each gas, `stride` apart from `at` on, bar. */
  begin(
    nitrogenBar: Float64Array,
    heliumBar: Float64Array,
    at: number,
    stride: number,
    along: BreathedAlong,
    minutes: number,
  ): void {
    this.along = along;
    this.minutes = minutes;
    this.anyHelium = along.heliumStartBar > 0 || along.heliumEndBar > 0;
    for (let c = 0; c < COMPARTMENTS; c += 1) {
      this.nitrogenBar[c] = nitrogenBar[at + stride * c]!;
      this.heliumBar[c] = heliumBar[at + stride * c]!;
      if (this.heliumBar[c]! > 0) this.anyHelium = true;
    }
  }

  nitrogenAt(c: number, minutes: number): number {
    const { nitrogenStartBar, nitrogenEndBar } = this.along;
    const rate = this.minutes > 0 ? (nitrogenEndBar - nitrogenStartBar) / this.minutes : 0;
    return tensionAfter(this.nitrogenBar[c]!, nitrogenStartBar, rate, this.compartments.nitrogenK[c]!, minutes);
  }

  heliumAt(c: number, minutes: number): number {
    if (!this.anyHelium) return 0;
    const { heliumStartBar, heliumEndBar } = this.along;
    const rate = this.minutes > 0 ? (heliumEndBar - heliumStartBar) / this.minutes : 0;
    return tensionAfter(this.heliumBar[c]!, heliumStartBar, rate, this.compartments.heliumK[c]!, minutes);
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

  /** Moments at which a compartment's tolerated pressure under `gf` turns from rising to falling or back. */
  turns(c: number, gf: number): number[] {
    return this.turnsOf(c, (minutes) => this.toleratedBar(c, minutes, gf));
  }

  /** Moments at which a compartment passes its limit at the surface under `gf`, in either direction. */
  crossings(c: number, gf: number): number[] {
    const over = (minutes: number) => this.overBar(c, minutes, gf, this.surfaceBar);
    const marks = [0, ...this.turnsOf(c, over), this.minutes];
    const found: number[] = [];
    for (let i = 1; i < marks.length; i += 1) {
      const [from, to] = [marks[i - 1]!, marks[i]!];
      if (over(from) > 0 !== over(to) > 0) found.push(changeBetween((minutes) => over(minutes) > 0, from, to));
    }
    return found;
  }

  private turnsOf(c: number, value: (minutes: number) => number): number[] {
    if (!this.anyHelium) {
      const turn = this.nitrogenTurn(c);
      return turn === undefined ? [] : [turn];
    }
    const found: number[] = [];
    let from = 0;
    let pieceMin = FIRST_PIECE_MIN;
    while (from < this.minutes) {
      const to = this.minutes - from < 1.5 * pieceMin ? this.minutes : from + pieceMin;
      const turn = turnBetween(value, from, to);
      if (turn !== undefined) found.push(turn);
      from = to;
      pieceMin = Math.max(FIRST_PIECE_MIN, from / 8);
    }
    return found;
  }

  /** When a compartment holds what is breathed, which is where it turns: t = ln(1 + g·k/R)/k for a gap g = P − P_alv and a rate R. */
  private nitrogenTurn(c: number): number | undefined {
    const { nitrogenStartBar, nitrogenEndBar } = this.along;
    if (this.minutes === 0 || nitrogenEndBar === nitrogenStartBar) return undefined;
    const rate = (nitrogenEndBar - nitrogenStartBar) / this.minutes;
    const k = this.compartments.nitrogenK[c]!;
    const share = ((this.nitrogenBar[c]! - nitrogenStartBar) * k) / rate;
    if (!(share > 0)) return undefined;
    const minutes = Math.log1p(share) / k;
    return minutes < this.minutes ? minutes : undefined;
  }
}

/** Schreiner's solution, at a rate of 0 Haldane's: tension after some minutes, bar. */
function tensionAfter(tensionBar: number, breathedBar: number, rate: number, k: number, minutes: number): number {
  const gone = Math.expm1(-k * minutes);
  return tensionBar + (tensionBar - breathedBar) * gone + rate * (minutes + gone / k);
}

/** The first moment of what is so at `to` and not at `from`, by halving. */
export function changeBetween(so: (minutes: number) => boolean, from: number, to: number): number {
  const wanted = so(to);
  let before = from;
  let after = to;
  for (let halving = 0; halving < MOST_HALVINGS && after - before > MOMENT_MIN * Math.max(1, after); halving += 1) {
    const middle = (before + after) / 2;
    if (middle <= before || middle >= after) break;
    if (so(middle) === wanted) after = middle;
    else before = middle;
  }
  return after;
}

const GOLDEN = (Math.sqrt(5) - 1) / 2;
/** A turn is found this closely, min: its value, flat there, is then exact to rounding. */
const TURN_MIN = 1e-7;
/** How far from an end of a piece its slope is felt, as a share of the piece. */
const FEELER = 1e-4;

/** Where a function turns within a piece short enough to hold one turn at most; undefined where it goes one way only. */
function turnBetween(value: (minutes: number) => number, from: number, to: number): number | undefined {
  const feel = (to - from) * FEELER;
  const up = value(from + feel) - value(from);
  const upLater = value(to) - value(to - feel);
  if (up === 0 || upLater === 0 || up > 0 === upLater > 0) return undefined;
  const better = (one: number, other: number) => (up > 0 ? one >= other : one <= other);
  let [before, after] = [from, to];
  let one = after - GOLDEN * (after - before);
  let other = before + GOLDEN * (after - before);
  let [atOne, atOther] = [value(one), value(other)];
  while (after - before > TURN_MIN) {
    if (better(atOne, atOther)) {
      [after, other, atOther] = [other, one, atOne];
      one = after - GOLDEN * (after - before);
      atOne = value(one);
    } else {
      [before, one, atOne] = [one, other, atOther];
      other = before + GOLDEN * (after - before);
      atOther = value(other);
    }
  }
  return (before + after) / 2;
}
