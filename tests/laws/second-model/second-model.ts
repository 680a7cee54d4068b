import published from '@/content/published/zhl16.json';

/*
 * A second model, written for tests alone from the project's conventions and the published coefficients, as plainly as it
 * can be said: small steps, all sixteen compartments at each, no closed form but those of one step. It takes nothing from
 * the engine, so that a mistake made there isn't made here.
 */

/** One even change of depth, or a stay. Metres, minutes, fractions. */
export interface Way {
  readonly fromM: number;
  readonly toM: number;
  readonly minutes: number;
  readonly o2: number;
  readonly he: number;
}

export interface Place {
  readonly surfaceBar: number;
  readonly barPerMetre: number;
}

export interface Factors {
  readonly low: number;
  readonly high: number;
}

/** A diver at an instant: sixteen tensions of each gas, bar, and the anchor of the line, m; NaN while free. */
export interface Diver {
  readonly nitrogenBar: readonly number[];
  readonly heliumBar: readonly number[];
  readonly anchorM: number;
}

const WATER_VAPOUR_BAR = 0.0627;
const GRAVITY = 9.80665;

interface Compartment {
  readonly kN2: number;
  readonly aN2: number;
  readonly bN2: number;
  readonly kHe: number;
  readonly aHe: number;
  readonly bHe: number;
}

const COMPARTMENTS: readonly Compartment[] = sixteen();

/** From 1b on, with the nitrogen of variant C. */
function sixteen(): Compartment[] {
  return published.values
    .filter(({ compartment }) => compartment !== '1')
    .map(({ nitrogen, helium }) => ({
      kN2: Math.LN2 / nitrogen.halfTimeMin,
      aN2: nitrogen.aC,
      bN2: nitrogen.b,
      kHe: Math.LN2 / helium.halfTimeMin,
      aHe: helium.a,
      bHe: helium.b,
    }));
}

/** The standard atmosphere of 1976 at an altitude, in water of so many kg/m³, or in which 10 m are 1 bar. */
export function placeAt(altitudeM: number, densityKgM3?: number): Place {
  return {
    surfaceBar: 1.01325 * (1 - altitudeM / 44330.8) ** 5.255876,
    barPerMetre: densityKgM3 === undefined ? 0.1 : (densityKgM3 * GRAVITY) / 1e5,
  };
}

/** Settled on air. */
export function settled({ surfaceBar }: Place): Diver {
  return {
    nitrogenBar: COMPARTMENTS.map(() => (surfaceBar - WATER_VAPOUR_BAR) * 0.79),
    heliumBar: COMPARTMENTS.map(() => 0),
    anchorM: NaN,
  };
}

const pressure = ({ surfaceBar, barPerMetre }: Place, depthM: number) => surfaceBar + barPerMetre * depthM;

/** Schreiner's equation, as it is printed. */
function schreiner(bar: number, breathedBar: number, ratePerMin: number, k: number, minutes: number): number {
  return breathedBar + ratePerMin * (minutes - 1 / k) - (breathedBar - bar - ratePerMin / k) * Math.exp(-k * minutes);
}

function breathe(place: Place, diver: Diver, { fromM, toM, minutes, o2, he }: Way): Omit<Diver, 'anchorM'> {
  const startBar = pressure(place, fromM) - WATER_VAPOUR_BAR;
  const rate = minutes > 0 ? ((toM - fromM) * place.barPerMetre) / minutes : 0;
  const n2 = 1 - o2 - he;
  return {
    nitrogenBar: COMPARTMENTS.map(({ kN2 }, c) =>
      schreiner(diver.nitrogenBar[c]!, startBar * n2, rate * n2, kN2, minutes),
    ),
    heliumBar: COMPARTMENTS.map(({ kHe }, c) => schreiner(diver.heliumBar[c]!, startBar * he, rate * he, kHe, minutes)),
  };
}

function mixed(diver: Omit<Diver, 'anchorM'>, c: number) {
  const { aN2, bN2, aHe, bHe } = COMPARTMENTS[c]!;
  const n = diver.nitrogenBar[c]!;
  const h = diver.heliumBar[c]!;
  return { bar: n + h, a: (aN2 * n + aHe * h) / (n + h), b: (bN2 * n + bHe * h) / (n + h) };
}

/** Where the lowest pressure all sixteen tolerate under one factor lies, m; negative above the surface. */
function toleratedM(place: Place, diver: Omit<Diver, 'anchorM'>, factor: number): number {
  const bars = COMPARTMENTS.map((_, c) => {
    const { bar, a, b } = mixed(diver, c);
    return (bar - a * factor) / (factor / b - factor + 1);
  });
  return (Math.max(...bars) - place.surfaceBar) / place.barPerMetre;
}

const lineAt = ({ low, high }: Factors, depthM: number, anchorM: number) =>
  depthM >= anchorM ? low : high + ((low - high) * depthM) / anchorM;

/** How far the worst of the sixteen is over the line at a depth, bar. */
function overBar(place: Place, diver: Diver, factors: Factors, depthM: number): number {
  const factor = Number.isNaN(diver.anchorM) ? factors.high : lineAt(factors, depthM, diver.anchorM);
  const p = pressure(place, depthM);
  return Math.max(
    ...COMPARTMENTS.map((_, c) => {
      const { bar, a, b } = mixed(diver, c);
      return bar - (p + factor * (a + p / b - p));
    }),
  );
}

/** The shallowest depth from which down to the anchor all are within the line, m: by halving. */
export function ceilingM(place: Place, diver: Diver, factors: Factors): number {
  if (Number.isNaN(diver.anchorM)) return 0;
  if (factors.low === factors.high) return toleratedM(place, diver, factors.high);
  let [over, within] = [0, diver.anchorM];
  for (let halving = 0; halving < 60; halving += 1) {
    const middle = (over + within) / 2;
    if (overBar(place, diver, factors, middle) > 0) over = middle;
    else within = middle;
  }
  return within;
}

/** Takes a diver one small step on, the anchor with them. */
function stepped(place: Place, diver: Diver, factors: Factors, way: Way): Diver {
  const then = breathe(place, diver, way);
  const bound = toleratedM(place, then, factors.high) > 0;
  const low = toleratedM(place, then, factors.low);
  return { ...then, anchorM: bound ? Math.max(Number.isNaN(diver.anchorM) ? 0 : diver.anchorM, low) : NaN };
}

/** Small steps along some ways, each of so many seconds at most, with how deep the diver is after it and when, min. */
export function* along(place: Place, start: Diver, factors: Factors, ways: readonly Way[], stepS: number) {
  let diver = start;
  let before = 0;
  for (const way of ways) {
    const steps = Math.max(1, Math.ceil((way.minutes * 60) / stepS - 1e-9));
    const depthAt = (step: number) => way.fromM + ((way.toM - way.fromM) * step) / steps;
    for (let step = 1; step <= steps; step += 1) {
      const part = { ...way, fromM: depthAt(step - 1), toM: depthAt(step), minutes: way.minutes / steps };
      diver = stepped(place, diver, factors, part);
      yield { way, diver, depthM: part.toM, minutes: before + (way.minutes * step) / steps };
    }
    before += way.minutes;
  }
}

/** How far over the line the worst compartment comes anywhere along some ways, bar. */
export function worstBar(place: Place, start: Diver, factors: Factors, ways: readonly Way[], stepS = 1): number {
  let worst = -Infinity;
  for (const { diver, depthM } of along(place, start, factors, ways, stepS))
    worst = Math.max(worst, overBar(place, diver, factors, depthM));
  return worst;
}
