import { LENGTH_UNITS, METRES_PER_FOOT } from '../../quantity/length';
import { atMost, NUMBER_START, plainText } from '../../quantity/number';
import type { UnitSystem } from '../../quantity/unit-system';
import type { LineRead, Span } from '../script/line';
import { ScriptPage, type Script } from '../script/page';

/** Settings that are depths, heights or rates; cylinders keep the units they are stamped in. */
const CONVERTED: ReadonlySet<string> = new Set([
  'altitude',
  'adapted to',
  'arrived from',
  'plan ascent',
  'plan descent',
  'carry',
  'setup',
]);

/** How far a figure may move for a rounder one, m or m/min: far less than a gauge tells. */
const NEAR = 0.02;
/** The same of a height above the sea. */
const NEAR_HEIGHT = 0.5;
const HEIGHTS: ReadonlySet<string> = new Set(['altitude', 'adapted to', 'arrived from']);

/** A length, with or without "a minute" after it. */
const LENGTHS = /([-+]?\d+(?:[.,]\d+)?)(\s*)(metres?|meters?|m|feet|foot|ft)\b(?!\s*(?:in|s)\b)/gi;

/**
 * Writes a script's depths, heights and rates in the other units. Times, gases and remarks stay as they are, and so does
 * the dive but for rounding: a depth moves by no more than 2 cm, a rate by 2 cm a minute, a height by half a metre. Text that cannot be read comes back as it was.
 */
export function writeInUnits(script: Script, system: UnitSystem): string {
  const page = new ScriptPage(script);
  for (let line = 0; line < page.length; line += 1)
    for (const { span, near } of convertible(page.read(line)).sort((one, other) => other.span[0] - one.span[0]))
      page.replace(line, span, converted(page.line(line).slice(...span), system, near));
  return page.editedOrAsGiven();
}

/** A rate moves by no more than this part of itself to be a multiple of five feet a minute. */
const NEAR_RATE = 0.03;

/**
 * Writes the steps of a script in feet as one would think of them there: depths in whole feet, rates in multiples of
 * five feet a minute where that is near. The settings stay as they are, and the dive but for half a foot of depth.
 */
export function writeStepsInFeet(script: Script): string {
  const page = new ScriptPage(script);
  for (let line = 0; line < page.length; line += 1) {
    const leg = page.leg(line);
    if (leg?.speed?.value?.by === 'rate') {
      const feet = leg.speed.value.mMin / METRES_PER_FOOT;
      const round = Math.round(feet / 5) * 5;
      page.replace(
        line,
        leg.speed.span,
        `${Math.abs(round - feet) <= NEAR_RATE * feet ? round : Math.round(feet)} ft/min`,
      );
    }
    if (leg?.depth.value) page.replace(line, leg.depth.span, `${Math.round(leg.depth.value / METRES_PER_FOOT)} ft`);
  }
  return page.editedOrAsGiven();
}

function convertible(read: LineRead): { span: Span; near: number }[] {
  if (read.as === 'setting') {
    const { name } = read.setting;
    return CONVERTED.has(name) ? [{ span: read.value.span, near: HEIGHTS.has(name) ? NEAR_HEIGHT : NEAR }] : [];
  }
  if (read.as !== 'step' || (read.step.kind !== 'descend' && read.step.kind !== 'ascend')) return [];
  const { depthM, speed } = read.step;
  const spans = [...(depthM?.value ? [depthM.span] : []), ...(speed?.value?.by === 'rate' ? [speed.span] : [])];
  return spans.map((span) => ({ span, near: NEAR }));
}

function converted(text: string, system: UnitSystem, near: number): string {
  return text.replace(LENGTHS, (whole: string, number: string, gap: string, unit: string) => {
    const size = LENGTH_UNITS.get(plainText(unit));
    const digits = NUMBER_START.exec(plainText(number))?.[0].replace(',', '.');
    if (size === undefined || digits === undefined || (size === 1) === (system === 'metric')) return whole;
    return `${number.startsWith('+') ? '+' : ''}${roundest((Number(digits) * size) / (system === 'metric' ? 1 : METRES_PER_FOOT), system === 'metric' ? near : near / METRES_PER_FOOT)}${gap}${system === 'metric' ? 'm' : 'ft'}`;
  });
}

/** With as few decimals as leave it near enough. */
function roundest(value: number, near: number): string {
  for (let decimals = 0; decimals < 3; decimals += 1) {
    const text = atMost(value, decimals).replace('−', '-');
    if (Math.abs(Number(text) - value) <= near) return text;
  }
  return atMost(value, 3).replace('−', '-');
}
