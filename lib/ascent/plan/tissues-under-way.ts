import type { GradientFactors } from '../../dive/dive';
import { ALL_COMPARTMENTS, COMPARTMENTS } from '../../tissue/coefficients';
import { toleratedAmbientBar } from '../../tissue/limit';
import { FREE, lineAlong, type LineState } from '../anchor';
import { lineDepthBar } from '../ceiling';
import { GasPath } from '../gas-path';
import type { AscentPart, AscentSite, AscentStart } from './schedule';
import { SHARES, type Stretch } from './stretch';

/* Long because it is one algorithm: its steps share the arrays they work in, and every one is asked in its innermost loop. */

/** Rounding allowance when a tension is held against its limit, bar. */
const ROUNDING_BAR = 1e-12;

/** Looked up in each loop: here it is a constant of the module, which an imported one is not everywhere. */
const SHARES_EACH = SHARES;

/** Numbers of each compartment in `coefficients`: nitrogen's a, b and 1/b − 1, helium's a and b. */
const COEFFICIENTS = 5;

/**
 * The tissues of a diver on the way up with the line that holds there, and the one question a schedule asks of them: may
 * this climb be made now, and if not, after how long a wait? A climb may be made if at no instant of it a compartment
 * passes the line. Waits are whole multiples of `unitMin`.
 *
 * Asked thousands of times while a picture is drawn: what its loops need lies together, each compartment's numbers side
 * by side (nitrogen, then helium), and they make nothing new. Most climbs are settled by looking at where they end;
 * one in which gas is still taken up, so that a limit might be passed or the line move on the way, is followed closely.
 */
export class TissuesUnderWay {
  line: LineState = FREE;
  private gf: GradientFactors = { low: 1, high: 1 };
  private tensions = new Float64Array(2 * COMPARTMENTS);
  private tensionsNext = new Float64Array(2 * COMPARTMENTS);
  /** How the tensions were before a way that may turn out not to be open. */
  private readonly before = new Float64Array(2 * COMPARTMENTS);
  private readonly coefficients = new Float64Array(COEFFICIENTS * COMPARTMENTS);
  /** Shares of a gap to the breathed pressure left after so many units. */
  private readonly leftAfterUnits: number[][] = [];
  /** The compartment that last forbade a climb is asked first: it mostly forbids the next one too. */
  private strictest = 0;
  /** Without any helium, half the work can be left out. */
  private holdsHelium = false;
  /** While it is known that the anchor can't sink. */
  private anchorHolds = false;
  private followed: GasPath | undefined;

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

  /** Made when first needed: most climbs need none. */
  private get path(): GasPath {
    return (this.followed ??= new GasPath(this.site.compartments, this.site.surfaceBar));
  }

  begin({ nitrogenBar, heliumBar, at, anchorM }: AscentStart, gf: GradientFactors): void {
    const { tensions, site } = this;
    this.gf = gf;
    this.strictest = 0;
    this.holdsHelium = false;
    for (let c = 0; c < COMPARTMENTS; c += 1) {
      const helium = heliumBar[at + c]!;
      tensions[2 * c] = nitrogenBar[at + c]!;
      tensions[2 * c + 1] = helium;
      if (helium > 0) this.holdsHelium = true;
    }
    this.line = this.lineNow(anchorM * site.barPerMetre);
  }

  /** The ceiling on the line now, below the surface, bar; 0 for none. */
  ceilingBar(): number {
    const { line, gf, tensions, coefficients, site } = this;
    if (!line.bound) return 0;
    let deepestBar = 0;
    for (let c = 0; c < COMPARTMENTS; c += 1) {
      const at = c * COEFFICIENTS;
      const n = tensions[2 * c]!;
      const h = tensions[2 * c + 1]!;
      const { a, b } = mixedAt(n, h, coefficients, at);
      const ownBar =
        gf.low === gf.high
          ? toleratedAmbientBar(n + h, a, b, gf.high) - site.surfaceBar
          : lineDepthBar(n + h, a, b, gf, site.surfaceBar, line.anchorBar);
      if (ownBar > deepestBar) deepestBar = ownBar;
    }
    return gf.low === gf.high ? deepestBar : Math.min(deepestBar, line.anchorBar);
  }

  /** Remembers how the diver stands, to come back to it. */
  remember(): () => void {
    const { line, holdsHelium } = this;
    const tensions = this.tensions.slice();
    return () => {
      this.tensions.set(tensions);
      this.line = line;
      this.holdsHelium = holdsHelium;
    };
  }

  /** Takes a way whatever the limits say. */
  take(way: readonly Stretch[]): void {
    for (const stretch of way) this.follow(stretch, false);
  }

  /** Takes a way if every compartment keeps the line all along it, and says whether it did. */
  takeIfWithin(way: readonly Stretch[]): boolean {
    return this.takeAfter(0, way);
  }

  /**
   * Waits where a way begins until it may be taken, and takes it. Says how many minutes it waited, one unit at least;
   * Infinity, and the way is not taken, if that would be more than `longestMin`.
   */
  takeAfterWait(way: readonly Stretch[], longestMin: number): number {
    const most = longestMin / this.unitMin;
    let units = 0;
    this.anchorHolds = !this.lineMayMove(way);
    do {
      // Where the line may move meanwhile each unit is tried; else those in which the strictest alone forbids are passed over.
      units = this.anchorHolds ? this.unitsForStrictest(units, most, way) : units + 1;
    } while (units <= most && !this.takeAfter(units, way));
    this.anchorHolds = false;
    return units > most ? Infinity : units * this.unitMin;
  }

  /** How the line stands with the tensions as they are, when the anchor was at least so deep before. */
  private lineNow(anchorBar: number): LineState {
    const { gf, tensions, coefficients, site } = this;
    const { surfaceBar } = site;
    let bound = false;
    let deepestBar = anchorBar + surfaceBar;
    for (let c = 0; c < COMPARTMENTS; c += 1) {
      const n = tensions[2 * c]!;
      const h = tensions[2 * c + 1]!;
      const at = c * COEFFICIENTS;
      bound ||= n + h - surfaceBar - gf.high * gradientBar(n, h, coefficients, at, surfaceBar) > 0;
      const ownBar =
        h === 0
          ? (n - coefficients[at]! * gf.low) / (gf.low * coefficients[at + 2]! + 1)
          : toleratedBar(n, h, coefficients, at, gf.low);
      if (ownBar > deepestBar) deepestBar = ownBar;
    }
    return bound ? { bound, anchorBar: deepestBar - surfaceBar } : FREE;
  }

  private factorAt(belowBar: number, anchorBar: number): number {
    const { low, high } = this.gf;
    if (belowBar <= 0 || anchorBar <= 0) return high;
    return belowBar >= anchorBar ? low : high + ((low - high) * belowBar) / anchorBar;
  }

  /** Takes a way after some units of waiting, if every compartment then keeps the line all along it. */
  private takeAfter(units: number, way: readonly Stretch[]): boolean {
    // What is settled at once needs no way back.
    if (way.length === 1) {
      const settled = this.settledByEnds(units, way[0]!);
      if (settled !== undefined) return settled;
    }
    const { line, holdsHelium, before } = this;
    before.set(this.tensions);
    for (let i = 0; i < way.length; i += 1) {
      const stretch = way[i]!;
      const unitsHere = i === 0 ? units : 0;
      let taken = way.length === 1 ? undefined : this.settledByEnds(unitsHere, stretch);
      if (taken === undefined) {
        if (unitsHere > 0) this.wait(stretch, units * this.unitMin);
        taken = this.follow(stretch, true);
      }
      if (taken) continue;
      this.tensions.set(before);
      this.line = line;
      this.holdsHelium = holdsHelium;
      return false;
    }
    return true;
  }

  /** Holds where a way begins for some minutes, breathing what is breathed there. */
  wait({ nitrogenStartBar, heliumStartBar }: Stretch, minutes: number): void {
    const along = {
      nitrogenStartBar,
      nitrogenEndBar: nitrogenStartBar,
      heliumStartBar,
      heliumEndBar: heliumStartBar,
    };
    this.path.begin(this.tensions, this.tensions, 0, 2, along, minutes, 1);
    this.line = lineAlong(this.path, this.gf, this.line)!;
    this.holdsHelium ||= heliumStartBar > 0;
    for (let c = 0; c < COMPARTMENTS; c += 1) {
      this.tensions[2 * c] = this.path.nitrogenAt(c, minutes);
      this.tensions[2 * c + 1] = this.path.heliumAt(c, minutes);
    }
  }

  /** The tissues so many minutes ago, while one gas was breathed at one depth. */
  goBack({ nitrogenStartBar, heliumStartBar }: Stretch, minutes: number): void {
    const { nitrogenK, heliumK } = this.site.compartments;
    const { tensions } = this;
    for (let c = 0; c < COMPARTMENTS; c += 1) {
      tensions[2 * c] = nitrogenStartBar + (tensions[2 * c]! - nitrogenStartBar) * Math.exp(nitrogenK[c]! * minutes);
      const helium = heliumStartBar + (tensions[2 * c + 1]! - heliumStartBar) * Math.exp(heliumK[c]! * minutes);
      tensions[2 * c + 1] = Math.max(0, helium);
    }
    this.line = this.lineNow(this.line.anchorBar);
  }

  /**
   * Whether a climb may be made after so many units, where looking at each compartment on arrival is enough to tell;
   * undefined where it is not. If it may, it is made.
   */
  private settledByEnds(units: number, stretch: Stretch): boolean | undefined {
    const { tensions, tensionsNext, coefficients, gf, site } = this;
    if (!this.line.bound && gf.low !== gf.high) return undefined;
    const { anchorBar } = this.line;
    const count = COMPARTMENTS;
    const wait = units > 0 ? this.leftAfter(units) : undefined;
    const { shares, nitrogenStartBar, nitrogenEndBar, heliumStartBar, heliumEndBar, part } = stretch;
    const anyHelium = this.holdsHelium || heliumStartBar > 0;
    const endBar = part.toM * site.barPerMetre;
    const ambientBar = site.surfaceBar + endBar;
    const factor = this.factorAt(endBar, anchorBar);
    const lineMoves = gf.low !== gf.high;
    // Where the line is steepest on this climb: at its deepest point, or at the anchor if that is shallower.
    const steepestBar = lineMoves ? Math.min(part.fromM * site.barPerMetre, anchorBar) : endBar;
    const steepestFactor = this.factorAt(steepestBar, anchorBar);
    const factorPerBar = lineMoves && endBar < anchorBar ? (gf.low - gf.high) / anchorBar : 0;
    const riseBarMin = part.minutes > 0 ? ((part.fromM - part.toM) * site.barPerMetre) / part.minutes : Infinity;
    const { nitrogenK, heliumK } = site.compartments;
    let deepestMoveBar = 0;
    let overAtEnd = false;
    let c = this.strictest;
    let refused = false;
    let closely = false;
    for (let asked = 0; asked < count; asked += 1) {
      const at = c * COEFFICIENTS;
      const share = c * SHARES_EACH;
      let n0 = tensions[2 * c]!;
      let h0 = tensions[2 * c + 1]!;
      if (wait) n0 = nitrogenStartBar + (n0 - nitrogenStartBar) * wait[2 * c]!;
      const n = carried(n0, nitrogenStartBar, nitrogenEndBar, shares[share]!, shares[share + 1]!);
      let h = 0;
      if (anyHelium) {
        if (wait) h0 = heliumStartBar + (h0 - heliumStartBar) * wait[2 * c + 1]!;
        h = carried(h0, heliumStartBar, heliumEndBar, shares[share + 2]!, shares[share + 3]!);
      }
      if (lineMoves && !this.anchorHolds && (n0 < nitrogenStartBar || (anyHelium && h0 < heliumStartBar))) {
        const most =
          Math.max(n0, nitrogenStartBar + (n0 - nitrogenStartBar) * shares[share]!) +
          (anyHelium ? Math.max(h0, heliumStartBar + (h0 - heliumStartBar) * shares[share + 2]!) : 0);
        const { a, b } = anyHelium ? strictestAt(coefficients, at) : { a: coefficients[at]!, b: coefficients[at + 1]! };
        const ownBar = toleratedAmbientBar(most, a, b, gf.low) - site.surfaceBar;
        if (ownBar > anchorBar + ROUNDING_BAR && ownBar > deepestMoveBar) deepestMoveBar = ownBar;
      }
      const gradient = gradientBar(n, h, coefficients, at, ambientBar);
      if (n + h - ambientBar - factor * gradient > ROUNDING_BAR) {
        this.strictest = c;
        refused = true;
        if (!lineMoves || this.anchorHolds) break;
      }
      // A tension falls fastest at the end. Where its limit falls faster all the way, it comes nearest to it there.
      const fallBarMin =
        nitrogenK[c]! * Math.max(0, n - nitrogenEndBar) + (anyHelium ? heliumK[c]! * Math.max(0, h - heliumEndBar) : 0);
      const steepness = anyHelium ? (gradient - this.interceptBar(n, h, at)) / ambientBar : coefficients[at + 2]!;
      const limitPerBar =
        1 +
        steepestFactor * steepness +
        factorPerBar * (gradient + (site.surfaceBar + steepestBar - ambientBar) * steepness);
      if (fallBarMin > riseBarMin * limitPerBar) closely = true;
      overAtEnd ||= n + h - site.surfaceBar - gf.high * gradientBar(n, h, coefficients, at, site.surfaceBar) > 0;
      tensionsNext[2 * c] = n;
      tensionsNext[2 * c + 1] = h;
      c = c + 1 === count ? 0 : c + 1;
    }
    if (refused) return deepestMoveBar > 0 ? undefined : false;
    if (closely || (lineMoves && !overAtEnd && endBar > 0)) return undefined;
    if (deepestMoveBar > 0) {
      // While the diver stays below what the anchor may sink to, `low` holds all the way and only its end is to be found.
      if (wait || deepestMoveBar > endBar) return undefined;
      this.line = { bound: true, anchorBar: this.deepestAlong(stretch, anchorBar) };
    }
    this.holdsHelium = anyHelium;
    this.tensions = tensionsNext;
    this.tensionsNext = tensions;
    if (!overAtEnd) this.line = FREE;
    return true;
  }

  /** The deepest ceiling at low along a stretch from where the tensions are, at least the anchor, bar below the surface. */
  private deepestAlong(stretch: Stretch, anchorBar: number): number {
    const { path, tensions, gf } = this;
    const { minutes } = stretch.part;
    path.begin(tensions, tensions, 0, 2, stretch, minutes, 1);
    let deepestBar = anchorBar;
    for (let c = 0; c < COMPARTMENTS; c += 1) {
      deepestBar = Math.max(deepestBar, path.toleratedBar(c, minutes, gf.low));
      for (const turn of path.turns(c, gf.low)) deepestBar = Math.max(deepestBar, path.toleratedBar(c, turn, gf.low));
    }
    return deepestBar;
  }

  /** a of a compartment for the gases it holds, bar. */
  private interceptBar(n: number, h: number, at: number): number {
    return mixedAt(n, h, this.coefficients, at).a;
  }

  /** Takes one stretch, following the line closely; with `within`, only if it is kept all along, and says whether. */
  private follow(along: Stretch, within: boolean): boolean {
    const { part } = along;
    const { path, gf } = this;
    if (!this.line.bound && this.staysFree(along)) {
      this.carry(along);
      return true;
    }
    path.begin(this.tensions, this.tensions, 0, 2, along, part.minutes, 1);
    const line = lineAlong(
      path,
      gf,
      this.line,
      (from, to, anchorBar) => !within || this.keeps(part, from, to, anchorBar),
    );
    if (line === null) return false;
    this.carry(along);
    this.line = line;
    return true;
  }

  /** Whether the line is kept all along a piece of the path on which the dive is bound and the anchor lies so deep at least. */
  private keeps({ fromM, toM, minutes: takesMin }: AscentPart, from: number, to: number, anchorBar: number): boolean {
    const { path, site, gf } = this;
    const fromBar = fromM * site.barPerMetre;
    const perMinute = takesMin > 0 ? ((toM - fromM) * site.barPerMetre) / takesMin : 0;
    const belowBar = (minutes: number) => fromBar + perMinute * minutes;
    const shallowestBar = site.surfaceBar + Math.min(belowBar(from), belowBar(to));
    // A deeper anchor only gives more room.
    const leastFactor = this.factorAt(Math.max(belowBar(from), belowBar(to)), anchorBar);
    const asked = ALL_COMPARTMENTS.filter((c) => path.mostBar(c) > path.leastLimitBar(c, leastFactor, shallowestBar));
    if (asked.length === 0) return true;
    const sinking =
      gf.low === gf.high ? [] : ALL_COMPARTMENTS.filter((c) => path.mostToleratedBar(c, gf.low) > anchorBar);
    const overBar = (minutes: number) => {
      const depthBar = belowBar(minutes);
      let anchorNowBar = gf.low === gf.high ? 0 : anchorBar;
      for (const c of sinking) anchorNowBar = Math.max(anchorNowBar, path.toleratedBar(c, minutes, gf.low));
      const factor = this.factorAt(depthBar, anchorNowBar);
      let worst = -Infinity;
      for (const c of asked) worst = Math.max(worst, path.overBar(c, minutes, factor, site.surfaceBar + depthBar));
      return worst;
    };
    const kinkMin = perMinute === 0 ? 0 : (anchorBar - fromBar) / perMinute;
    return kinkMin > from && kinkMin < to
      ? staysBelow(overBar, from, kinkMin) && staysBelow(overBar, kinkMin, to)
      : staysBelow(overBar, from, to);
  }

  /** Whether a free diver stays free all along a stretch, by the most that each compartment could hold on it. */
  private staysFree({ shares, nitrogenStartBar, heliumStartBar }: Stretch): boolean {
    const { tensions, coefficients, gf, site } = this;
    const anyHelium = this.holdsHelium || heliumStartBar > 0;
    for (let c = 0; c < COMPARTMENTS; c += 1) {
      const at = c * COEFFICIENTS;
      const n = tensions[2 * c]!;
      const nMost = Math.max(n, nitrogenStartBar + (n - nitrogenStartBar) * shares[c * SHARES_EACH]!);
      let most = nMost;
      let a = coefficients[at]!;
      let b = coefficients[at + 1]!;
      if (anyHelium) {
        const h = tensions[2 * c + 1]!;
        const left = shares[c * SHARES_EACH + 2]!;
        most += Math.max(h, heliumStartBar + (h - heliumStartBar) * left);
        ({ a, b } = strictestFrom(nMost, h * left, coefficients, at));
      }
      if (most > site.surfaceBar + gf.high * (a + site.surfaceBar / b - site.surfaceBar)) return false;
    }
    return true;
  }

  /** Takes the tensions to the end of a stretch. */
  private carry({ shares, nitrogenStartBar, nitrogenEndBar, heliumStartBar, heliumEndBar }: Stretch): void {
    const { tensions } = this;
    if (heliumStartBar > 0) this.holdsHelium = true;
    for (let c = 0; c < COMPARTMENTS; c += 1) {
      const share = c * SHARES_EACH;
      tensions[2 * c] = carried(tensions[2 * c]!, nitrogenStartBar, nitrogenEndBar, shares[share]!, shares[share + 1]!);
      if (this.holdsHelium)
        tensions[2 * c + 1] = carried(
          tensions[2 * c + 1]!,
          heliumStartBar,
          heliumEndBar,
          shares[share + 2]!,
          shares[share + 3]!,
        );
    }
  }

  /** Units after which the strictest compartment alone would allow a way, counted on from `units`; Infinity if more than `most`. */
  private unitsForStrictest(units: number, most: number, way: readonly Stretch[]): number {
    const { coefficients, tensions, strictest: c, site } = this;
    const { nitrogenStartBar, heliumStartBar } = way[0]!;
    const endBar = way[way.length - 1]!.part.toM * site.barPerMetre;
    const ambientBar = site.surfaceBar + endBar;
    const factor = this.factorAt(endBar, this.line.anchorBar);
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
      nitrogenGapBar *= shares[c * SHARES_EACH]!;
      heliumGapBar *= shares[c * SHARES_EACH + 2]!;
      nitrogenEndBar = carried(
        nitrogenEndBar,
        part.nitrogenStartBar,
        part.nitrogenEndBar,
        shares[c * SHARES_EACH]!,
        shares[c * SHARES_EACH + 1]!,
      );
      heliumEndBar = carried(
        heliumEndBar,
        part.heliumStartBar,
        part.heliumEndBar,
        shares[c * SHARES_EACH + 2]!,
        shares[c * SHARES_EACH + 3]!,
      );
    }
    const nitrogenOnly = heliumEndBar === 0 && heliumGapBar === 0;
    const allowedGapBar =
      ambientBar +
      factor * gradientBar(nitrogenEndBar, 0, coefficients, c * COEFFICIENTS, ambientBar) +
      ROUNDING_BAR -
      nitrogenEndBar;
    for (let waited = units + 1; waited <= most; waited += 1) {
      nitrogenGapBar *= nitrogenLeft;
      if (nitrogenOnly) {
        if (nitrogenGapBar <= allowedGapBar) return waited;
        continue;
      }
      heliumGapBar *= heliumLeft;
      const n = nitrogenEndBar + nitrogenGapBar;
      const h = heliumEndBar + heliumGapBar;
      if (n + h - ambientBar - factor * gradientBar(n, h, coefficients, c * COEFFICIENTS, ambientBar) <= ROUNDING_BAR)
        return waited;
    }
    return Infinity;
  }

  /** Whether the anchor might sink, or the dive become bound, during a wait where a way begins and on that way. */
  private lineMayMove(way: readonly Stretch[]): boolean {
    const { gf, tensions, coefficients, site } = this;
    if (gf.low === gf.high) return false;
    if (!this.line.bound) return true;
    const nitrogenMostBar = Math.max(...way.map(({ nitrogenStartBar }) => nitrogenStartBar));
    const heliumMostBar = Math.max(...way.map(({ heliumStartBar }) => heliumStartBar));
    for (let c = 0; c < COMPARTMENTS; c += 1) {
      const at = c * COEFFICIENTS;
      const n = Math.max(tensions[2 * c]!, nitrogenMostBar);
      const h = Math.max(tensions[2 * c + 1]!, heliumMostBar);
      const strict = h > 0 ? strictestAt(coefficients, at) : { a: coefficients[at]!, b: coefficients[at + 1]! };
      const tolerated = (n + h - strict.a * gf.low) / (gf.low / strict.b - gf.low + 1);
      if (tolerated - site.surfaceBar > this.line.anchorBar + ROUNDING_BAR) return true;
    }
    return false;
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

/** How finely a smooth stretch is looked through before its ends are believed: this often halved at least, this often at most. */
const LEAST_HALVINGS = 2;
const MOST_HALVINGS = 40;

/**
 * Whether a function stays at or below 0 between two moments. Each piece is halved until what it strays from a straight
 * line can no longer take it above 0, or it is seen above.
 */
function staysBelow(value: (minutes: number) => number, from: number, to: number): boolean {
  const look = (start: number, atStart: number, end: number, atEnd: number, halvings: number): boolean => {
    if (atStart > ROUNDING_BAR || atEnd > ROUNDING_BAR) return false;
    const middle = (start + end) / 2;
    const atMiddle = value(middle);
    if (atMiddle > ROUNDING_BAR) return false;
    const strays = Math.abs(atMiddle - (atStart + atEnd) / 2);
    if (halvings >= LEAST_HALVINGS && Math.max(atStart, atMiddle, atEnd) + 2 * strays <= 0) return true;
    if (halvings >= MOST_HALVINGS || strays < ROUNDING_BAR) return true;
    return look(start, atStart, middle, atMiddle, halvings + 1) && look(middle, atMiddle, end, atEnd, halvings + 1);
  };
  return look(from, value(from), to, value(to), 0);
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

/** a and b of a compartment, each averaged by tension. */
function mixedAt(
  n: number,
  h: number,
  coefficients: Float64Array,
  at: number,
): { readonly a: number; readonly b: number } {
  if (h === 0) return { a: coefficients[at]!, b: coefficients[at + 1]! };
  return {
    a: (coefficients[at]! * n + coefficients[at + 3]! * h) / (n + h),
    b: (coefficients[at + 1]! * n + coefficients[at + 4]! * h) / (n + h),
  };
}

/** Lowest ambient pressure that a compartment tolerates under `gf`, bar. */
function toleratedBar(n: number, h: number, coefficients: Float64Array, at: number, gf: number): number {
  const { a, b } = mixedAt(n, h, coefficients, at);
  return toleratedAmbientBar(n + h, a, b, gf);
}

/** The coefficients under which a compartment tolerates least, whatever it holds. */
function strictestAt(coefficients: Float64Array, at: number): { readonly a: number; readonly b: number } {
  return {
    a: Math.min(coefficients[at]!, coefficients[at + 3]!),
    b: Math.max(coefficients[at + 1]!, coefficients[at + 4]!),
  };
}

/** The same where it holds so much nitrogen at most and so much helium at least, bar. */
function strictestFrom(nMost: number, hLeast: number, coefficients: Float64Array, at: number) {
  const mixed = mixedAt(nMost, hLeast, coefficients, at);
  return { a: Math.min(mixed.a, coefficients[at + 3]!), b: Math.max(mixed.b, coefficients[at + 4]!) };
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
