import { AIR, gasName, OXYGEN, type Gas, WHOLE_GAS } from '../physics/gas';
import { plainText } from '../quantity/number';
import { accepted, quoted, refused, refusedFor, type Parsed } from '../quantity/parsed';
import { fractionOfPercent, percentNumber } from '../quantity/percent';

const GASES = 'air, oxygen, 32% or 18/45';
const NUMBER = '(-?[\\d.,]+)';
const ONE_PERCENT = new RegExp(`^(nitrox|eanx?)? *${NUMBER} *(%)? *(?:o2|oxygen)?$`);
const TWO_PERCENTS = new RegExp(`^(?:trimix|tx)? *${NUMBER} *%? */ *${NUMBER} *%?$`);
const NAMES: Readonly<Record<string, Gas>> = {
  air: AIR,
  oxygen: OXYGEN,
  o2: OXYGEN,
  'pure oxygen': OXYGEN,
  'pure o2': OXYGEN,
};

/** Reads a breathing gas: `air`, `oxygen`, `32%`, `nitrox 32`, `18/45` (oxygen and helium), `trimix 18/45`. */
export function parseGas(text: string): Parsed<Gas> {
  const plain = plainText(text).trim().replace(/\s+/g, ' ');
  const named = Object.hasOwn(NAMES, plain) ? NAMES[plain] : undefined;
  if (named) return accepted(named);
  const two = TWO_PERCENTS.exec(plain);
  if (two) return mixOf(two[1]!, two[2]!);
  const one = ONE_PERCENT.exec(plain);
  if (one) return one[1] || one[3] ? mixOf(one[2]!, '0') : refusedBare(one[2]!);
  const trimix = /^(?:trimix|tx) *([\d.,]+) *%?$/.exec(plain);
  if (trimix) return refused(`${quoted(text)} gives no helium.`, `Write oxygen and helium, such as ${trimix[1]}/45.`);
  return refused(`${quoted(text)} is not a gas.`, `Write ${GASES} (oxygen and helium in percent).`);
}

function mixOf(oxygen: string, helium: string): Parsed<Gas> {
  const o2 = fractionOfPercent(oxygen);
  if (!o2.ok) return o2;
  const he = fractionOfPercent(helium);
  if (!he.ok) return he;
  if (o2.value < 0 || he.value < 0) return refused('A gas has no negative parts.', `Write ${GASES}.`);
  if (o2.value > 1) return refused(`A gas cannot be ${oxygen}% oxygen.`, 'Write at most 100%.');
  if (he.value > 1) return refused(`A gas cannot be ${helium}% helium.`, 'Write at most 100.');
  if (o2.value + he.value > WHOLE_GAS) {
    return refused(
      `${oxygen}% oxygen and ${helium}% helium are more than 100% together.`,
      'Write oxygen first, then helium, such as 18/45.',
    );
  }
  return accepted({ o2: o2.value, he: he.value });
}

function refusedBare(number: string): Parsed<Gas> {
  const value = Number(number.replace(',', '.'));
  const percent = value < 1 ? percentNumber(value) : number;
  const what = `${number} of what?`;
  return Number.isFinite(value)
    ? refusedFor(what, `Write ${percent}% for its oxygen.`, [`${percent}%`])
    : refused(what, `Write ${GASES}.`);
}

/** A gas in the words of a script; `parseGas` reads exactly the same gas from it. */
export function writeGas(gas: Gas): string {
  const name = gasName(gas);
  const read = parseGas(name);
  // The name rounds to a ten-thousandth of a percent, which nearly every gas survives.
  if (read.ok && read.value.o2 === gas.o2 && read.value.he === gas.he) return name;
  return gas.he === 0 ? `${percentNumber(gas.o2)}%` : `${percentNumber(gas.o2)}/${percentNumber(gas.he)}`;
}
