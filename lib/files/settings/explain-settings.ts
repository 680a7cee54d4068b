import type { Settings } from '../../dive/dive';
import { ALTITUDE_RANGE_M } from '../../physics/atmosphere';
import { AIR, sameGas, type Gas } from '../../physics/gas';
import { WATERS } from '../../physics/water';
import { accepted, refused, type Parsed } from '../../quantity/parsed';
import { diveFromRecords, type RecordOptions } from '../records/dive-from-record';
import type { Recording } from '../records/record';
import { sayExplanation } from './explanation-words';
import { LimitsTried, type Fit, type LimitPair } from './fit-limits';
import type { Site } from './unit-fit';
import { comparisonOf, type Comparison } from './readings-compared';
import { tellingMinute } from './telling-minute';

/** Which settings of the unit are open to doubt; gradient factors always are. */
export interface Doubt {
  readonly water: boolean;
  readonly altitude: boolean;
  /** Tried only where one gas was breathed throughout. */
  readonly gas: boolean;
  /** Whether it still knew of the dives before; tried only where there are several. */
  readonly memory: boolean;
}

export interface SearchProgress {
  readonly done: number;
  readonly of: number;
}

/** All limits that explain the unit at one site as well as the noise of its readings allows. */
export interface SettingsSet {
  readonly site: Site;
  readonly best: Fit;
  /** To the whole percent; where no stop was shown, low stands at high and says nothing. */
  readonly pairs: readonly LimitPair[];
}

export interface Explanation {
  /** As the record says, if that explains the unit; else those that depart from it least. Never empty. */
  readonly sets: readonly SettingsSet[];
  /** What explains the unit no better than the first set, and differs from the record in more. */
  readonly others: readonly SettingsSet[];
  /** Whether the first sets explain the unit at all. */
  readonly explains: boolean;
  readonly sawStops: boolean;
  /** What was found and how well it explains the unit, in plain words. */
  readonly sentences: readonly string[];
}

/** Mean squares, min² or m². What a record as exact as its figures may leave unexplained, for rounding and sampling. */
const FLOOR = 0.01;
/** Of what the best settings leave unexplained, so much more may be left by others that are as good. */
const NOISE_SHARE = 1.5;
/** A departure from the record has to make the mean square so much smaller to be taken for one. */
const DEPARTURE_PAYS = 0.01;
/** No settings explain a unit where so much of it is left; a mean square. */
const POOR = 0.6;
/** Sites that depart from the record in two things are tried where those that depart in one leave so much. */
const WELL = 0.03;

const ALTITUDES_M = [0, 300, 600, 900, 1200, 1500, 1800, 2100, 2500, 3000];
const ALTITUDE_STEPS_M = [150, 50];
const NITROX: readonly Gas[] = [28, 32, 36, 40].map((percent) => ({ o2: percent / 100, he: 0 }));
const OXYGEN_STEPS = [0.02, 0.01];
/** Of the sites that depart from the record in two things, so many are looked at closely. */
const CLOSE_LOOKS = 6;
const FEWEST_READINGS = 5;
/** A loss of memory is tried before each of so many dives after the first. */
const MOST_FORGOTTEN = 4;
const ALL_IN_DOUBT: Doubt = { water: true, altitude: true, gas: true, memory: true };
/** The work of a search, in rough looks at a site. */
const ROWS_WORK = 20;
const CLOSE_WORK = 6;

/**
 * Searches for all settings that explain the figures a unit showed as well as their noise allows: gradient factors to the
 * percent and, where in doubt, water, altitude (to 50 m), gas (to 1% of oxygen) and a loss of memory between dives. What
 * the record says of the site is believed unless departing from it pays. It yields how far it is and returns what it found; the same record always
 * gives the same answer.
 */
export function* explainSettings(
  recordings: readonly Recording[],
  { options = {}, doubt = ALL_IN_DOUBT }: { options?: RecordOptions; doubt?: Doubt } = {},
): Generator<SearchProgress, Parsed<Explanation>> {
  const made = diveFromRecords(recordings, options);
  if (!made.ok) return made;
  const { dive, offsetS } = made.value;
  const comparison = comparisonOf(recordings, offsetS, dive);
  const { noStop, ceiling, stopDepth, sawStops } = comparison;
  if (noStop.count + ceiling.count + stopDepth.count < FEWEST_READINGS) {
    return refused(
      'The record holds too few figures of the unit’s own to explain.',
      'Bring a record with its no-stop times, stops or ceilings.',
    );
  }
  const recorded = siteOfSettings(dive.settings);
  const oneGas = recordings.every(({ switches }) => switches.every(({ gas }) => sameGas(gas, recorded.gas)));
  const dives = doubt.memory ? Math.min(recordings.length, MOST_FORGOTTEN + 1) : 1;
  const sites = sitesOf(recorded, { ...doubt, gas: doubt.gas && oneGas }, dives);
  const single = sites.filter((site) => departuresOf(site, recorded) === 1);
  const double = sites.filter((site) => departuresOf(site, recorded) === 2);
  const of = ROWS_WORK + single.length + double.length + 2 * CLOSE_LOOKS * CLOSE_WORK;
  let done = 0;
  const worked = (work: number) => ({ done: (done += work), of });

  const asRecorded = new LimitsTried(comparison, recorded);
  asRecorded.rows();
  yield worked(ROWS_WORK);
  const departing: LimitsTried[] = [];
  for (const among of [single, double]) {
    const least = Math.min(...[asRecorded, ...departing].map((tried) => tried.best().misfit.loss));
    if (among === double && least <= WELL) {
      yield worked(double.length);
      continue;
    }
    const rough: LimitsTried[] = [];
    for (const site of among) {
      const tried = new LimitsTried(comparison, site);
      tried.rough();
      rough.push(tried);
      yield worked(1);
    }
    rough.sort((one, other) => one.best().misfit.loss - other.best().misfit.loss);
    // All that depart in one thing are looked at closely; of the others one of each kind, however it ranks.
    const close = rough.filter(
      (tried, rank) => among === single || rank < CLOSE_LOOKS || isFirstOfKind(tried, rank, rough, recorded),
    );
    for (const tried of close) {
      departing.push(refined(comparison, tried, recorded));
      yield worked((CLOSE_LOOKS * CLOSE_WORK) / close.length);
    }
  }

  const all = [asRecorded, ...departing];
  const least = Math.min(...all.map((tried) => tried.best().misfit.loss));
  const core = Math.min(
    ...all.filter((tried) => tried.best().misfit.loss === least).map((tried) => tried.best().misfit.core),
  );
  const most = least + FLOOR + NOISE_SHARE * core;
  const setOf = (tried: LimitsTried, within: number): SettingsSet => {
    const best = tried.best();
    return { site: tried.site, best, pairs: tried.within(Math.max(within, best.misfit.loss)) };
  };
  const own = setOf(asRecorded, most + DEPARTURE_PAYS);
  const believed = own.best.misfit.loss <= most + DEPARTURE_PAYS;
  const fitting = departing
    .filter((tried) => tried.best().misfit.loss <= most)
    .sort(
      (one, other) =>
        departuresOf(one.site, recorded) - departuresOf(other.site, recorded) ||
        one.best().misfit.loss - other.best().misfit.loss,
    );
  yield { done: of, of };
  const departed = distinct(fitting).map((tried) => setOf(tried, most));
  const fewest = departed[0] ? departuresOf(departed[0].site, recorded) : 0;
  const sets = believed ? [own] : departed.filter(({ site }) => departuresOf(site, recorded) === fewest);
  const others = believed ? departed : departed.filter((set) => !sets.includes(set));
  const explains = least <= POOR;
  const telling = explains ? tellingMinute(comparison, sets, others) : undefined;
  const found = { sets, others, explains, sawStops };
  return accepted({ ...found, sentences: sayExplanation(found, comparison, recorded, telling) });
}

function siteOfSettings({ water, altitudeM, gas }: Settings): Site {
  return { water, altitudeM, gas, forgotBefore: 0 };
}

function sitesOf(recorded: Site, doubt: Doubt, dives: number): Site[] {
  const waters = doubt.water ? WATERS : [recorded.water];
  const altitudes = doubt.altitude ? [...new Set([recorded.altitudeM, ...ALTITUDES_M])] : [recorded.altitudeM];
  const others = doubt.gas ? [AIR, ...NITROX].filter((gas) => !sameGas(gas, recorded.gas)) : [];
  const remembering = waters.flatMap((water) =>
    altitudes.flatMap((altitudeM) =>
      [recorded.gas, ...others].map((gas): Site => ({ water, altitudeM, gas, forgotBefore: 0 })),
    ),
  );
  return Array.from({ length: dives }, (_, forgotBefore) =>
    remembering.map((site): Site => ({ ...site, forgotBefore })),
  ).flat();
}

/** In which things, gradient factors aside, a unit is set otherwise than the record says. */
function departures(site: Site, recorded: Site): readonly boolean[] {
  return [
    site.water !== recorded.water,
    site.altitudeM !== recorded.altitudeM,
    !sameGas(site.gas, recorded.gas),
    site.forgotBefore !== 0,
  ];
}

function departuresOf(site: Site, recorded: Site): number {
  return departures(site, recorded).filter(Boolean).length;
}

function isFirstOfKind(tried: LimitsTried, rank: number, ranked: readonly LimitsTried[], recorded: Site): boolean {
  const kind = String(departures(tried.site, recorded));
  return ranked.findIndex(({ site }) => String(departures(site, recorded)) === kind) === rank;
}

/** Moves altitude and gas, where the unit departs from the record in them, by steps that shorten. */
function refined(comparison: Comparison, start: LimitsTried, recorded: Site): LimitsTried {
  let best = start;
  best.closer();
  const tryStep = (site: Site) => {
    const tried = new LimitsTried(comparison, site);
    const { low, high } = best.best().settings.gradientFactors;
    tried.loss(Math.round(low * 100), Math.round(high * 100));
    if (tried.closer().misfit.loss >= best.best().misfit.loss) return false;
    best = tried;
    return true;
  };
  const move = (steps: readonly number[], next: (step: number) => Site | undefined) => {
    for (const step of steps) {
      for (const way of [step, -step]) {
        for (let site = next(way); site && tryStep(site); site = next(way));
      }
    }
  };
  if (start.site.altitudeM !== recorded.altitudeM)
    move(ALTITUDE_STEPS_M, (step) => {
      const altitudeM = best.site.altitudeM + step;
      return altitudeM < 0 || altitudeM > ALTITUDE_RANGE_M[1] ? undefined : { ...best.site, altitudeM };
    });
  if (!sameGas(start.site.gas, recorded.gas))
    move(OXYGEN_STEPS, (step) => {
      const o2 = Math.round((best.site.gas.o2 + step) * 100) / 100;
      return o2 < 0.21 || o2 > 1 ? undefined : { ...best.site, gas: { o2, he: 0 } };
    });
  return best;
}

/** Of sites whose refining led to the same, one. */
function distinct(tried: readonly LimitsTried[]): LimitsTried[] {
  return [...new Map(tried.map((one) => [JSON.stringify(one.site), one])).values()];
}
