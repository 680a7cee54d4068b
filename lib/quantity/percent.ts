import { atMost, plainNumber, plainText, readNumber, shiftPoint } from './number';
import { accepted, quoted, refused, type Parsed } from './parsed';

/** Reads `85%` or `85 %`; a fraction, 0.85. */
export function parsePercent(text: string): Parsed<number> {
  const plain = plainText(text).trim();
  const number = plain.replace(/ *(?:%|per ?cent)$/, '');
  if (number === plain) {
    return /^[\d.,]+$/.test(plain)
      ? refused(`${plain} what?`, `Write ${plain}%.`)
      : refused(`${quoted(text)} is not a percentage.`, 'Write a percentage such as 85%.');
  }
  return fractionOfPercent(number);
}

/** Reads the number of a percentage without its sign; exactly the fraction nearest to it, so 29 is 0.29. */
export function fractionOfPercent(number: string): Parsed<number> {
  const read = readNumber(number, '%');
  // The point is moved in the text, not by dividing, so that writing and reading a fraction changes nothing.
  return read.ok ? accepted(Number(`${read.value.digits}e-2`) + 0) : read;
}

/** A fraction as the number of its percentage, exactly: 0.29 is `29`. */
export function percentNumber(fraction: number): string {
  return shiftPoint(plainNumber(fraction), 2);
}

/** A fraction as a percentage to at most so many decimals: `85%`. */
export function printPercent(fraction: number, decimals = 0): string {
  return `${atMost(fraction * 100, decimals)}%`;
}

/** Gradient factors as the trade writes them, in percent without the sign: `30/85`. */
export function printFactors({ low, high }: { readonly low: number; readonly high: number }): string {
  return `${percentNumber(low)}/${percentNumber(high)}`;
}
