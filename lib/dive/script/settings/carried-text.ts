import { atmosphereBar } from '../../../physics/atmosphere';
import { sameGas, type Gas } from '../../../physics/gas';
import { maximumOperatingDepthM } from '../../../physics/oxygen-depth';
import { barPerMetre } from '../../../physics/water';
import { plainNumber, plainText } from '../../../quantity/number';
import { accepted, quoted, refused, type Parsed } from '../../../quantity/parsed';
import { DEEPEST_M } from '../../bounds';
import type { Settings } from '../../dive';
import { parseGas, writeGas } from '../../gas-text';
import { PO2_SLACK_BAR, RESTING_PO2_BAR } from '../../../physics/oxygen-limits';
import { shifted } from './setting-values';
import { parseWorkingDepth } from '../../working-depth';

/** A gas of the `carry` setting as written: with no depth, it is taken from its maximum operating depth. */
export interface CarriedRead {
  readonly gas: Gas;
  readonly fromM: number | undefined;
}

/** Reads `50% from 21 m, oxygen from 6 m`. */
export function readCarried(text: string): Parsed<CarriedRead[]> {
  const carried: CarriedRead[] = [];
  let from = 0;
  // A comma between digits is a decimal comma, not the end of an entry.
  for (const item of plainText(text).split(/((?<!\d),|,(?!\d)|;|\sand\s)/)) {
    const separator = from > 0 && /^(?:,|;|\sand\s)$/.test(item);
    if (!separator) {
      const read = shifted(
        readAnswer(item, text.slice(from, from + item.length)),
        from + item.length - item.trimStart().length,
        item.trim().length,
      );
      if (!read.ok) return read;
      if (carried.some((other) => sameGas(other.gas, read.value.gas)))
        return carriedTwice(read.value.gas, [from, from + item.length]);
      carried.push(read.value);
    }
    from += item.length;
  }
  return accepted(carried);
}

function readAnswer(plain: string, typed: string): Parsed<CarriedRead> {
  const entry = plain.trim();
  if (entry === '')
    return refused(
      'A gas is missing here.',
      'Write gases with a comma between, such as 50% from 21 m, oxygen from 6 m.',
    );
  const [gasText = '', depthText, more] = entry.split(/\s+from\s+/);
  if (more !== undefined) return refused(`${quoted(typed)} gives two depths.`, 'Write one depth for each gas.');
  const gas = parseGas(gasText);
  if (!gas.ok) return shifted(gas, 0, gasText.length);
  if (gas.value.o2 === 0) return refused(`${quoted(typed)} has no oxygen.`, 'Carry a gas that keeps a diver alive.');
  if (depthText === undefined) return accepted({ gas: gas.value, fromM: undefined });
  const depth = parseWorkingDepth(depthText);
  const at = entry.lastIndexOf(depthText);
  if (!depth.ok) return shifted(depth, at, depthText.length);
  return accepted({ gas: gas.value, fromM: depth.value });
}

/** The refusal of a gas that is carried already; `at` is where in the value it stands, in characters. */
export function carriedTwice(gas: Gas, at?: readonly [number, number]) {
  return refused(`${writeGas(gas)} is carried twice.`, 'Keep one of the two.', at);
}

/** Where a carried gas is taken from when the script does not say: its maximum operating depth at rest, at a stop. */
export function carriedFromM(gas: Gas, settings: Settings): number {
  const limitBar = RESTING_PO2_BAR + PO2_SLACK_BAR;
  const modM = maximumOperatingDepthM(gas.o2, limitBar, atmosphereBar(settings.altitudeM), barPerMetre(settings.water));
  const step = settings.plan.stopStepM;
  return Math.max(0, Math.floor(Math.min(modM, DEEPEST_M) / step) * step);
}

/** Carried gases as the value of `carry`, each with its depth in metres; reads back as exactly the same. */
export function writeCarried(carried: Settings['carried']): string {
  return carried.map(({ gas, fromM }) => `${writeGas(gas)} from ${plainNumber(fromM)} m`).join(', ');
}
