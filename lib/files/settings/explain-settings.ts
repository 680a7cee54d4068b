import type { Settings } from '../../dive/dive';
import { AIR, sameGas, type Gas } from '../../physics/gas';
import { ALTITUDE_RANGE_M } from '../../physics/atmosphere';
import { WATERS } from '../../physics/water';
import { accepted, refused, type Parsed } from '../../quantity/parsed';
import { diveFromRecords, type RecordOptions } from '../records/dive-from-record';
import { sayExplanation } from './explanation-words';
import { fineFit, roughFit, type Fit, type Site } from './fit-limits';
import type { Recording } from '../records/record';
import { comparisonOf, type Comparison } from './unit-fit';

/** Which settings of the unit are open to doubt; gradient factors always are. */
export interface Doubt {
  readonly water: boolean;
  readonly altitude: boolean;
  /** Tried only where one gas was breathed throughout. */
  readonly gas: boolean;
}

export interface SearchProgress {
  readonly done: number;
  readonly of: number;
}

export interface Explanation {
  /** The best settings of each site tried, best first. */
  readonly ranked: readonly Fit[];
  /** How many figures of the unit were compared. */
  readonly readings: Comparison['count'];
  /** What was found and how well it explains the unit, in plain words. */
  readonly sentences: readonly string[];
}

const ALTITUDES_M = [0, 300, 600, 900, 1200, 1500, 1800, 2100, 2500, 3000];
const ALTITUDE_STEPS_M = [200, 100, 50];
const NITROX: readonly Gas[] = [28, 32, 36, 40].map((percent) => ({ o2: percent / 100, he: 0 }));
const OXYGEN_STEPS = [0.02, 0.01];
/** Sites looked at closely besides those that differ from the record in one thing alone. */
const CLOSE_LOOKS = 8;
const RANKED = 8;
/** The best of these are moved on in two things at once, unless they explain the unit already; score. */
const POLISHED = 3;
const EXPLAINED_SCORE = 0.01;
const FEWEST_READINGS = 5;

/**
 * Searches for the settings that best explain the figures a unit showed: gradient factors to the percent and, where in
 * doubt, water, altitude (to 50 m) and gas (to 1 % of oxygen). It yields how far it is and returns what it found; the
 * same record always gives the same answer.
 */
export function* explainSettings(
  recordings: readonly Recording[],
  { options = {}, doubt = { water: true, altitude: true, gas: true } }: { options?: RecordOptions; doubt?: Doubt } = {},
): Generator<SearchProgress, Parsed<Explanation>> {
  const made = diveFromRecords(recordings, options);
  if (!made.ok) return made;
  const { dive, offsetS } = made.value;
  const comparison = comparisonOf(recordings, offsetS, dive);
  const { count } = comparison;
  if (count.noStop + count.ceiling + count.stopDepth < FEWEST_READINGS) {
    return refused(
      'The record holds too few figures of the unit’s own to explain.',
      'Bring a record with its no-stop times, stops or ceilings.',
    );
  }
  const recorded = siteOfSettings(dive.settings);
  const oneGas = recordings.every(({ switches }) => switches.every(({ gas }) => sameGas(gas, recorded.gas)));
  const open = { ...doubt, gas: doubt.gas && oneGas };
  const sites = sitesOf(recorded, open);
  const of = 2 * sites.length;
  let done = 0;
  const rough: Fit[] = [];
  for (const site of sites) {
    rough.push(roughFit(comparison, site));
    yield { done: (done += 1), of };
  }
  const close = rough
    .map((fit) => ({ fit, departures: departuresOf(fit.settings, recorded) }))
    .sort((one, other) => one.fit.misfit.score - other.fit.misfit.score)
    .filter(({ departures }, rank) => departures <= 1 || rank < CLOSE_LOOKS);
  const fits: Fit[] = [];
  for (const { fit } of close) {
    fits.push(refined(comparison, fineFit(comparison, fit.settings), recorded));
    yield { done: (done += sites.length / close.length), of };
  }
  for (const fit of rankedFits(fits, recorded).slice(0, POLISHED)) {
    if (fit.misfit.score > EXPLAINED_SCORE) fits.push(polished(comparison, fit, open));
    yield { done: of, of };
  }
  const ranked = rankedFits(fits, recorded);
  return accepted({ ranked, readings: count, sentences: sayExplanation(ranked, comparison, recorded) });
}

/** Runs a search to its end. */
export function explainSettingsAtOnce(...given: Parameters<typeof explainSettings>): Parsed<Explanation> {
  const search = explainSettings(...given);
  for (;;) {
    const step = search.next();
    if (step.done) return step.value;
  }
}

function siteOfSettings({ water, altitudeM, gas }: Settings): Site {
  return { water, altitudeM, gas };
}

function sitesOf(recorded: Site, doubt: Doubt): Site[] {
  const waters = doubt.water ? WATERS : [recorded.water];
  const altitudes = doubt.altitude ? [...new Set([recorded.altitudeM, ...ALTITUDES_M])] : [recorded.altitudeM];
  const others = doubt.gas ? [AIR, ...NITROX].filter((gas) => !sameGas(gas, recorded.gas)) : [];
  return waters.flatMap((water) =>
    altitudes.flatMap((altitudeM) => [recorded.gas, ...others].map((gas) => ({ water, altitudeM, gas }))),
  );
}

/** In how many things, gradient factors aside, a unit is set otherwise than the record says. */
function departuresOf(site: Site, recorded: Site): number {
  return (
    Number(site.water !== recorded.water) +
    Number(site.altitudeM !== recorded.altitudeM) +
    Number(!sameGas(site.gas, recorded.gas))
  );
}

/** Moves altitude and gas, where the unit departs from the record in them, by steps that shorten. */
function refined(comparison: Comparison, start: Fit, recorded: Site): Fit {
  let best = start;
  const tryStep = (site: Site) => {
    const fit = fineFit(comparison, site, best.settings.gradientFactors);
    if (fit.misfit.score >= best.misfit.score) return false;
    best = fit;
    return true;
  };
  if (start.settings.altitudeM !== recorded.altitudeM) {
    for (const step of ALTITUDE_STEPS_M) {
      for (const way of [step, -step]) {
        while (
          inside(best.settings.altitudeM + way, 0, ALTITUDE_RANGE_M[1]) &&
          tryStep({ ...best.settings, altitudeM: best.settings.altitudeM + way })
        );
      }
    }
  }
  if (!sameGas(start.settings.gas, recorded.gas)) {
    for (const step of OXYGEN_STEPS) {
      for (const way of [step, -step]) {
        const next = () => hundredths(best.settings.gas.o2 + way);
        while (inside(next(), 0.21, 1) && tryStep({ ...best.settings, gas: { o2: next(), he: 0 } }));
      }
    }
  }
  return best;
}

/** Moves two things at once, which steps in one alone cannot: water together with gas or altitude. */
function polished(comparison: Comparison, start: Fit, open: Doubt): Fit {
  let best = start;
  for (let moved = true; moved;) {
    moved = false;
    for (const site of neighboursOf(best.settings, open)) {
      const fit = fineFit(comparison, site, best.settings.gradientFactors);
      if (fit.misfit.score >= best.misfit.score) continue;
      best = fit;
      moved = true;
    }
  }
  return best;
}

function neighboursOf({ water, altitudeM, gas }: Site, open: Doubt): Site[] {
  const waters = open.water ? WATERS : [water];
  const altitudes = open.altitude
    ? ALTITUDE_STEPS_M.flatMap((step) => [altitudeM + step, altitudeM - step]).filter((m) =>
        inside(m, 0, ALTITUDE_RANGE_M[1]),
      )
    : [];
  const oxygens =
    open.gas && gas.he === 0
      ? OXYGEN_STEPS.flatMap((step) => [gas.o2 + step, gas.o2 - step])
          .map(hundredths)
          .filter((o2) => inside(o2, 0.21, 1))
      : [];
  return waters.flatMap((other) => [
    { water: other, altitudeM, gas },
    ...altitudes.map((metres) => ({ water: other, altitudeM: metres, gas })),
    ...oxygens.map((o2) => ({ water: other, altitudeM, gas: { o2, he: 0 } })),
  ]);
}

function hundredths(fraction: number): number {
  return Math.round(fraction * 100) / 100;
}

function inside(value: number, from: number, to: number): boolean {
  return value >= from && value <= to;
}

/** Fits this close are equally good; of these the one that departs least from the record comes first. */
const EQUAL_SHARE = 1.02;
const EQUAL_SCORE = 1e-3;

function rankedFits(fits: readonly Fit[], recorded: Site): Fit[] {
  const key = ({ settings: { water, altitudeM, gas, gradientFactors } }: Fit) =>
    JSON.stringify([water, altitudeM, gas, gradientFactors]);
  const distinct = [...new Map(fits.map((fit) => [key(fit), fit])).values()];
  const byScore = distinct.sort(
    (one, other) => one.misfit.score - other.misfit.score || (key(one) < key(other) ? -1 : 1),
  );
  const best = byScore[0]!.misfit.score;
  const isBest = (fit: Fit) => fit.misfit.score <= best * EQUAL_SHARE + EQUAL_SCORE;
  const first = byScore
    .filter(isBest)
    .sort((one, other) => departuresOf(one.settings, recorded) - departuresOf(other.settings, recorded));
  return [...first, ...byScore.filter((fit) => !isBest(fit))].slice(0, RANKED);
}
