import { printStopDepth } from '../quantity/depth';
import { METRES_PER_FOOT } from '../quantity/length';
import { atMost, fixed } from '../quantity/number';
import type { UnitSystem } from '../quantity/unit-system';
import type { Water } from '../physics/water';
import type { SafetyStopState } from '../rules/safety-stop-state';
import { printFactors } from '../quantity/percent';
import type { BenchSettings } from './bench-settings';
import { gaugeWater } from './chamber-dive';
import type { Band, Expected } from './expected';

/** A depth finer than units show, so that deviations add up: `17.48 m`, `57.3 ft`. */
export function printExactDepth(depthM: number, system: UnitSystem): string {
  return system === 'metric' ? `${fixed(depthM, 2)} m` : `${fixed(depthM / METRES_PER_FOOT, 1)} ft`;
}

/** A difference of depths with its sign: `+0.30 m`, `−1.0 ft`, `0.00 m`. */
export function printDeviation(differenceM: number, system: UnitSystem): string {
  const text = printExactDepth(differenceM, system);
  return parseFloat(text) > 0 ? `+${text}` : text;
}

/** An allowance, finer than a reading: `0.75 m`. */
export function sayAllowance(allowedM: number, system: UnitSystem): string {
  return system === 'metric' ? `${atMost(allowedM, 2)} m` : `${atMost(allowedM / METRES_PER_FOOT, 1)} ft`;
}

/** No-stop minutes as a unit may show them: `9 to 13 min`, `more than 99 min`. */
export function sayNoStop({ from, to }: Band): string {
  if (!Number.isFinite(from)) return 'more than 99 min';
  if (!Number.isFinite(to)) return `${from} to more than 99 min`;
  return from === to ? `${from} min` : `${from} to ${to} min`;
}

/** Depths of a stop: `none to 3 m`, `6 m`. */
export function sayDepthBand({ from, to }: Band, system: UnitSystem): string {
  const say = (depthM: number) => (depthM > 0 ? printStopDepth(depthM, system) : 'none');
  return from === to ? say(to) : `${say(from)} to ${say(to)}`;
}

/** A band of hours in words, each end rounded up to a whole hour, so that no wait is told too short. */
export function sayHours({ from, to }: Band): string {
  const say = (hours: number) => String(Math.ceil(hours - 1e-9));
  return say(from) === say(to) ? `${say(to)} h` : `${say(from)} to ${say(to)} h`;
}

const SAFETY_STOP_WORDS: Readonly<Record<SafetyStopState, string>> = {
  none: 'none',
  due: 'asked for',
  counting: 'asked for, counting',
  paused: 'asked for, standing still',
  done: 'made, if it was not left',
  skipped: 'none',
};

/** All a correct unit shows at a checkpoint besides its depth, in a few words each. */
export function sayExpected(expected: Expected, system: UnitSystem): string[] {
  const { noStopMin, stopM, rateAlarm, safetyStop, noFlyH } = expected;
  return [
    noStopMin ? `no-stop time ${sayNoStop(noStopMin)}` : '',
    stopM ? `required stop ${sayDepthBand(stopM, system)}` : '',
    rateAlarm === null ? '' : rateAlarm ? 'rate alarm on the way' : 'no rate alarm on the way',
    safetyStop ? `safety stop ${SAFETY_STOP_WORDS[safetyStop]}` : '',
    noFlyH ? `no flying for ${sayHours(noFlyH)}` : '',
  ].filter((text) => text !== '');
}

export const WATER_WORDS: Readonly<Record<Water, string>> = {
  fresh: 'fresh water',
  salt: 'salt water',
  reference: 'the gauge convention (10 m or 32.8 ft to the bar)',
};

/** How the chamber stood and what was allowed, for the head of a sheet. */
export function saySettings(settings: BenchSettings, system: UnitSystem): string {
  const { strictest, loosest, toleranceM, tolerancePercent, headM, surfaceBar, potWater } = settings;
  const limits = `gradient factors ${printFactors(strictest)} to ${printFactors(loosest)}`;
  const allowed = [
    toleranceM === null ? '' : sayAllowance(toleranceM, system),
    tolerancePercent === null ? '' : `${tolerancePercent}% of the depth`,
  ].filter((text) => text !== '');
  const parts = [
    `Water in the pot: ${WATER_WORDS[potWater]}`,
    `gauge: ${system === 'metric' ? 'metres' : 'feet'} of ${WATER_WORDS[gaugeWater(settings)]}`,
    `surface pressure: ${atMost(surfaceBar * 1000, 2)} hPa`,
    `water over the units: ${sayAllowance(headM, system)}`,
    `limits: ${limits}`,
    `depth tolerance: ${allowed.length === 0 ? 'none stated' : allowed.join(' and ')}`,
  ];
  return `${parts.join('; ')}.`;
}
