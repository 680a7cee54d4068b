import { gasName, sameGas } from '../../physics/gas';
import { atMost } from '../../quantity/number';
import { percentNumber, printFactors } from '../../quantity/percent';
import type { Fit, Site } from './fit-limits';
import type { Comparison, Misfit } from './unit-fit';

/** A unit no settings explain better than this works by other rules, or the record says too little; score. */
const POOR_SCORE = 3;
const MUCH_WORSE = 1.25;

/** What a search found, in plain words: the settings, how well they explain the unit, and what stays open. */
export function sayExplanation(ranked: readonly Fit[], { count, sawStops }: Comparison, recorded: Site): string[] {
  const [best, next] = ranked;
  if (!best) return [];
  const shown = [
    count.noStop > 0 && `${count.noStop} no-stop times`,
    count.ceiling > 0 && `${count.ceiling} ceilings`,
    count.stopDepth > 0 && `${count.stopDepth} stop depths`,
  ].filter(Boolean);
  const sentences: string[] = [];
  if (best.misfit.score > POOR_SCORE) {
    sentences.push(
      `Nothing tried explains the unit well: at best, with ${saySettings(best, recorded, sawStops)}, the model is off by ${sayMisfit(best.misfit)}. The unit may follow other rules than this model.`,
    );
  } else {
    sentences.push(
      `The unit is best explained by ${saySettings(best, recorded, sawStops)}: with these the model is off by ${sayMisfit(best.misfit)} over ${shown.join(' and ')}.`,
    );
  }
  if (!sawStops)
    sentences.push(
      'The record shows no stop and no ceiling, so the low gradient factor left no trace in it and stays unknown.',
    );
  if (next && next.misfit.score <= best.misfit.score * MUCH_WORSE + 0.05) {
    sentences.push(
      `Almost as good: ${saySettings(next, recorded, sawStops)}, off by ${sayMisfit(next.misfit)}. The record alone can hardly tell them apart.`,
    );
  }
  sentences.push(
    '“Off by” is the root mean square difference. That settings explain a unit does not prove that it has them.',
  );
  return sentences;
}

/** Settings as a person says them, with what differs from the record. */
export function saySettings({ settings }: Fit, recorded: Site, sawStops: boolean): string {
  const limits = sawStops
    ? `gradient factors ${printFactors(settings.gradientFactors)}`
    : `a high gradient factor of ${percentNumber(settings.gradientFactors.high)}`;
  const others = [
    settings.water !== recorded.water && `${settings.water} water`,
    settings.altitudeM !== recorded.altitudeM && `an altitude of ${settings.altitudeM} m`,
    !sameGas(settings.gas, recorded.gas) && `${gasName(settings.gas)} as the gas`,
  ].filter((text) => text !== false);
  return [limits, ...others].join(', ').replace(/, ([^,]*)$/, ' and $1');
}

/** How far off the model is, in minutes and metres. */
export function sayMisfit({ noStopMin, ceilingM, stopDepthM }: Misfit): string {
  const parts = [
    noStopMin !== undefined && `${hundredths(noStopMin)} min of no-stop time`,
    ceilingM !== undefined && `${hundredths(ceilingM)} m of ceiling`,
    stopDepthM !== undefined && `${hundredths(stopDepthM)} m of stop depth`,
  ].filter(Boolean);
  return parts.join(' and ');
}

function hundredths(value: number): string {
  return value < 0.005 ? 'less than 0.01' : atMost(value, 2);
}
