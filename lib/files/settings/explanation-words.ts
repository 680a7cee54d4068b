import { gasName, sameGas } from '../../physics/gas';
import { METRES_PER_FOOT } from '../../quantity/length';
import { atMost } from '../../quantity/number';
import type { Explanation, SettingsSet } from './explain-settings';
import type { Comparison } from './readings-compared';
import type { ShownThen, TellingMinute } from './telling-minute';
import type { Misfit, Site } from './unit-fit';
import { capital } from '../../quantity/capital';

/** What a search found, in plain words: the settings as ranges, how well they explain the unit, and what stays open. */
export function sayExplanation(
  { sets, others, explains, sawStops }: Omit<Explanation, 'sentences'>,
  comparison: Comparison,
  recorded: Site,
  telling: TellingMinute | undefined,
): string[] {
  const [first] = sets;
  if (!first) return [];
  const { misfit } = first.best;
  const say = (set: SettingsSet) => saySet(set, recorded, sawStops);
  if (!explains) {
    return [
      `Nothing tried explains the unit: at best, near ${say(first)}, the model is off by ${sayMisfit(misfit)}, and ${sayOutliers(misfit, comparison)}. The unit may follow other rules than this model.`,
    ];
  }
  const sentences: string[] = [];
  const off = `With what fits best the model is off by ${sayMisfit(misfit)} over ${sayCounts(comparison)}.`;
  if (sets.length === 1) sentences.push(`The unit is explained by ${say(first)}. ${off}`);
  else
    sentences.push(`The unit is explained by ${sets.map(say).join(', or by ')}: the record can’t tell which. ${off}`);
  if (first.pairs.length > 1)
    sentences.push(
      'All settings in these ranges that are marked in the picture explain it as well as its readings can tell: they can’t be told apart from this record.',
    );
  if (!sawStops)
    sentences.push(
      'The record shows no stop and no ceiling, so the low gradient factor left no trace in it and stays unknown.',
    );
  if (misfit.lateS !== 0)
    sentences.push(
      `Its figures stand ${Math.abs(misfit.lateS)} s too ${misfit.lateS > 0 ? 'late' : 'early'} in the record; they were compared with that moved back.`,
    );
  if (misfit.outliers > 0)
    sentences.push(`${capital(sayOutliers(misfit, comparison))}; these were given little weight.`);
  if (others.length > 0)
    sentences.push(
      `No better and no worse, but ${sets[0]!.site === recorded ? 'otherwise than the record says' : 'further from what the record says'}: ${others.map(say).join('; ')}.`,
    );
  if (telling)
    sentences.push(
      `${telling.minutes === 1 ? 'One minute' : `${telling.minutes} minutes`} more at ${atMost(telling.depthM, 1)} m would tell: ${telling.shown.map((one) => sayShown(one, recorded, sawStops)).join(', ')}.`,
    );
  sentences.push(
    '“Off by” is the root mean square difference. That settings explain a unit does not prove that it has them.',
  );
  return sentences;
}

/** Ranges of limits as a person says them, with what differs from the record. */
export function saySet({ site, pairs, best }: SettingsSet, recorded: Site, sawStops: boolean): string {
  const { low, high } = best.settings.gradientFactors;
  const all = pairs.length > 0 ? pairs : [{ low: Math.round(low * 100), high: Math.round(high * 100) }];
  const highs = range(all.map((pair) => pair.high));
  const limits = sawStops
    ? `a low gradient factor ${range(all.map((pair) => pair.low))} and a high one ${highs}`
    : `a high gradient factor ${highs}`;
  const others = sayDepartures(site, recorded);
  return [limits, ...others].join(', ').replace(/, ([^,]*)$/, ' with $1');
}

/** In what settings of the site differ from what the record says, in words. */
export function sayDepartures(site: Site, recorded: Site): string[] {
  return [
    site.water !== recorded.water && `${site.water} water`,
    site.altitudeM !== recorded.altitudeM && `an altitude of ${site.altitudeM} m`,
    !sameGas(site.gas, recorded.gas) && `${gasName(site.gas)} as the gas`,
    site.forgotBefore !== 0 && `the tissues it reckons with begun anew before dive ${site.forgotBefore + 1}`,
  ].filter((text) => text !== false);
}

function range(values: readonly number[]): string {
  const [from, to] = [Math.min(...values), Math.max(...values)];
  return from === to ? `of ${from}` : `from ${from} to ${to}`;
}

function sayCounts({ noStop, ceiling, stopDepth }: Comparison): string {
  return [
    noStop.count > 0 && `${noStop.count} no-stop times`,
    ceiling.count > 0 && `${ceiling.count} ceilings`,
    stopDepth.count > 0 && `${stopDepth.count} stop depths`,
  ]
    .filter(Boolean)
    .join(' and ');
}

function sayOutliers({ outliers }: Misfit, { noStop, ceiling, stopDepth }: Comparison): string {
  const of = noStop.count + ceiling.count + stopDepth.count;
  if (outliers === 0) return 'no single reading stands out';
  return `${outliers} of ${of} readings ${outliers === 1 ? 'is' : 'are'} far from what these would show`;
}

function sayShown({ settings, noStopMin, stopM }: ShownThen, recorded: Site, sawStops: boolean): string {
  const { low, high } = settings.gradientFactors;
  const limits = sawStops ? `${percent(low)}/${percent(high)}` : `a high one of ${percent(high)}`;
  const with_ = [limits, ...sayDepartures(settings, recorded)].join(' and ');
  const shows =
    stopM > 0 ? `a first stop at ${stopM} m` : `${noStopMin > 98 ? 'over 98' : noStopMin} min without stops`;
  return `with ${with_} it shows ${shows}`;
}

/** How far off the model is: minutes, and metres with the feet beside them. */
export function sayMisfit({ noStopMin, ceilingM, stopDepthM }: Misfit): string {
  const parts = [
    noStopMin !== undefined && `${hundredths(noStopMin)} min of no-stop time`,
    ceilingM !== undefined && `${sayOff(ceilingM)} of ceiling`,
    stopDepthM !== undefined && `${sayOff(stopDepthM)} of stop depth`,
  ].filter(Boolean);
  return parts.join(' and ');
}

function sayOff(depthM: number): string {
  return `${hundredths(depthM)} m (${hundredths(depthM / METRES_PER_FOOT)} ft)`;
}

function hundredths(value: number): string {
  return value < 0.005 ? 'less than 0.01' : atMost(value, 2);
}

function percent(fraction: number): string {
  return atMost(fraction * 100, 0);
}
