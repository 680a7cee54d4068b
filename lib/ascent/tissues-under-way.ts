import { COMPARTMENTS } from '../tissue/coefficients';
import type { AscentSite, AscentStart } from './schedule';
import { SHARES, type Stretch } from './stretch';

/** Rounding allowance when a tension is held against its limit, bar. */
const ROUNDING_BAR = 1e-12;

/** An ambient pressure under which no tension is too high, bar. */
const TOLERATING_ANYTHING_BAR = 1e9;

/** Numbers of each compartment in `coefficients`: nitrogen's a, b and 1/b − 1, helium's a and b. */
const COEFFICIENTS = 5;

/**
 * The tissues of a diver on the way up, and the one question a schedule asks of them: may this climb be made now, and if
 * not, after how long a wait? Waits are whole multiples of `unitMin`.
 *
 * Asked thousands of times while a picture is drawn: what its loops need lies together, each compartment's numbers side
 * by side (nitrogen, then helium), and they make nothing new.
 */
export class TissuesUnderWay {
  private tensions = new Float64Array(2 * COMPARTMENTS);
  private tensionsNext = new Float64Array(2 * COMPARTMENTS);
  private readonly coefficients = new Float64Array(COEFFICIENTS * COMPARTMENTS);
  /** Shares of a gap to the breathed pressure left after so many units. */
  private readonly leftAfterUnits: number[][] = [];
  /** The compartment that last forbade a climb is asked first: it mostly forbids the next one too. */
  private strictest = 0;
  /** Without any helium, half the work can be left out. */
  private holdsHelium = false;

  constructor(
    private readonly site: AscentSite,
    private readonly unitMin: number,
  ) {
    const { nitrogenA, nitrogenB, heliumA, heliumB } = site.compartments;
    for (let c = 0; c < COMPARTMENTS; c += 1) {
      const at = c * COEFFICIENTS;
      this.coefficients[at] = nitrogenA[c]!;
      this.coefficients[at + 1] = nitrogenB[c]!;
      this.coefficients[at + 2] = 1 / nitrogenB[c]! - 1;
      this.coefficients[at + 3] = heliumA[c]!;
      this.coefficients[at + 4] = heliumB[c]!;
    }
  }

  begin({ nitrogenBar, heliumBar, at }: AscentStart): void {
    const { tensions } = this;
    this.strictest = 0;
    this.holdsHelium = false;
    for (let c = 0; c < COMPARTMENTS; c += 1) {
      tensions[2 * c] = nitrogenBar[at + c]!;
      tensions[2 * c + 1] = heliumBar[at + c]!;
      if (tensions[2 * c + 1]! > 0) this.holdsHelium = true;
    }
  }

  /** Takes a way whatever the limits say. */
  take(way: readonly Stretch[]): void {
    this.takeAfter(0, way, TOLERATING_ANYTHING_BAR, 1);
  }

  /** Takes a way if every compartment is within `gf` where it ends, at `ambientBar`, and says whether it did. */
  takeIfWithin(way: readonly Stretch[], ambientBar: number, gf: number): boolean {
    return this.takeAfter(0, way, ambientBar, gf);
  }

  /**
   * Waits where a way begins until it may be taken, and takes it. Says how many minutes it waited, one unit at least;
   * Infinity, and the way is not taken, if that would be more than `longestMin`.
   */
  takeAfterWait(way: readonly Stretch[], ambientBar: number, gf: number, longestMin: number): number {
    const most = longestMin / this.unitMin;
    let units = 0;
    do {
      units = this.unitsForStrictest(units, most, way, ambientBar, gf);
      if (units > most) return Infinity;
    } while (!this.takeAfter(units, way, ambientBar, gf));
    return units * this.unitMin;
  }

  /** Takes a way after some units of waiting, if every compartment is then within `gf` where it ends. */
  private takeAfter(units: number, way: readonly Stretch[], ambientBar: number, gf: number): boolean {
    const { tensions, tensionsNext, coefficients } = this;
    const count = COMPARTMENTS;
    const stretches = way.length;
    const wait = units > 0 ? this.leftAfter(units) : undefined;
    const { shares, nitrogenStartBar, nitrogenEndBar, heliumStartBar, heliumEndBar } = way[0]!;
    const anyHelium = this.holdsHelium || heliumStartBar > 0 || stretches > 1;
    let c = this.strictest;
    for (let asked = 0; asked < count; asked += 1) {
      let n = tensions[2 * c]!;
      let h = tensions[2 * c + 1]!;
      if (wait) n = nitrogenStartBar + (n - nitrogenStartBar) * wait[2 * c]!;
      n = carried(n, nitrogenStartBar, nitrogenEndBar, shares[c * SHARES]!, shares[c * SHARES + 1]!);
      if (anyHelium) {
        if (wait) h = heliumStartBar + (h - heliumStartBar) * wait[2 * c + 1]!;
        h = carried(h, heliumStartBar, heliumEndBar, shares[c * SHARES + 2]!, shares[c * SHARES + 3]!);
      }
      for (let i = 1; i < stretches; i += 1) {
        const part = way[i]!;
        n = carried(
          n,
          part.nitrogenStartBar,
          part.nitrogenEndBar,
          part.shares[c * SHARES]!,
          part.shares[c * SHARES + 1]!,
        );
        h = carried(
          h,
          part.heliumStartBar,
          part.heliumEndBar,
          part.shares[c * SHARES + 2]!,
          part.shares[c * SHARES + 3]!,
        );
      }
      if (n + h - ambientBar - gf * gradientBar(n, h, coefficients, c * COEFFICIENTS, ambientBar) > ROUNDING_BAR) {
        this.strictest = c;
        return false;
      }
      tensionsNext[2 * c] = n;
      tensionsNext[2 * c + 1] = h;
      c = c + 1 === count ? 0 : c + 1;
    }
    this.holdsHelium = anyHelium;
    this.tensions = tensionsNext;
    this.tensionsNext = tensions;
    return true;
  }

  /** Units after which the strictest compartment alone would allow a way, counted on from `units`; Infinity if more than `most`. */
  private unitsForStrictest(
    units: number,
    most: number,
    way: readonly Stretch[],
    ambientBar: number,
    gf: number,
  ): number {
    const { coefficients, tensions, strictest: c } = this;
    const { nitrogenStartBar, heliumStartBar } = way[0]!;
    const unit = this.leftAfter(1);
    const nitrogenLeft = unit[2 * c]!;
    const heliumLeft = unit[2 * c + 1]!;
    let nitrogenGapBar = (tensions[2 * c]! - nitrogenStartBar) * nitrogenLeft ** units;
    let heliumGapBar = (tensions[2 * c + 1]! - heliumStartBar) * heliumLeft ** units;
    // A way leaves a share of a gap and, whatever that was, adds the same.
    let nitrogenEndBar = nitrogenStartBar;
    let heliumEndBar = heliumStartBar;
    for (const part of way) {
      const { shares } = part;
      nitrogenGapBar *= shares[c * SHARES]!;
      heliumGapBar *= shares[c * SHARES + 2]!;
      nitrogenEndBar = carried(
        nitrogenEndBar,
        part.nitrogenStartBar,
        part.nitrogenEndBar,
        shares[c * SHARES]!,
        shares[c * SHARES + 1]!,
      );
      heliumEndBar = carried(
        heliumEndBar,
        part.heliumStartBar,
        part.heliumEndBar,
        shares[c * SHARES + 2]!,
        shares[c * SHARES + 3]!,
      );
    }
    if (heliumEndBar === 0 && heliumGapBar === 0) {
      const allowedGapBar =
        ambientBar +
        gf * gradientBar(nitrogenEndBar, 0, coefficients, c * COEFFICIENTS, ambientBar) +
        ROUNDING_BAR -
        nitrogenEndBar;
      for (let waited = units + 1; waited <= most; waited += 1) {
        nitrogenGapBar *= nitrogenLeft;
        if (nitrogenGapBar <= allowedGapBar) return waited;
      }
      return Infinity;
    }
    for (let waited = units + 1; waited <= most; waited += 1) {
      nitrogenGapBar *= nitrogenLeft;
      heliumGapBar *= heliumLeft;
      const n = nitrogenEndBar + nitrogenGapBar;
      const h = heliumEndBar + heliumGapBar;
      if (n + h - ambientBar - gf * gradientBar(n, h, coefficients, c * COEFFICIENTS, ambientBar) <= ROUNDING_BAR)
        return waited;
    }
    return Infinity;
  }

  private leftAfter(units: number): number[] {
    return (this.leftAfterUnits[units] ??=
      units === 1 ? this.leftAfterOne() : eachToThePower(this.leftAfter(1), units));
  }

  private leftAfterOne(): number[] {
    const { nitrogenK, heliumK } = this.site.compartments;
    const left: number[] = [];
    for (let c = 0; c < COMPARTMENTS; c += 1) {
      left.push(Math.exp(-nitrogenK[c]! * this.unitMin), Math.exp(-heliumK[c]! * this.unitMin));
    }
    return left;
  }
}

/** A tension at the end of a stretch. */
function carried(tensionBar: number, startBar: number, endBar: number, left: number, trailing: number): number {
  return endBar + (tensionBar - startBar) * left - (endBar - startBar) * trailing;
}

/** M − p of a compartment that may hold both gases, bar: a + p/b − p, with a and b each averaged by tension. */
function gradientBar(n: number, h: number, coefficients: Float64Array, at: number, ambientBar: number): number {
  if (h === 0) return coefficients[at]! + ambientBar * coefficients[at + 2]!;
  const inertBar = n + h;
  const a = (coefficients[at]! * n + coefficients[at + 3]! * h) / inertBar;
  return a + (ambientBar * inertBar) / (coefficients[at + 1]! * n + coefficients[at + 4]! * h) - ambientBar;
}

/** Each number to a whole power, by squaring: a wait is the same step so many times over. */
function eachToThePower(numbers: readonly number[], power: number): number[] {
  const result = numbers.slice();
  for (let i = 0; i < result.length; i += 1) {
    let factor = numbers[i]!;
    let product = 1;
    for (let left = power; left > 0; left >>= 1) {
      if (left & 1) product *= factor;
      factor *= factor;
    }
    result[i] = product;
  }
  return result;
}
