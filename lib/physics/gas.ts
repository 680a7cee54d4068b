/** Shares of a gas closer than this are one. */
const SAME_SHARE = 1e-9;
/** The shares of a gas come to no more than this: one, but for rounding. */
export const WHOLE_GAS = 1 + SAME_SHARE;
/** A breathing gas by its fractions of oxygen and helium, 0–1; the rest is taken as nitrogen. */
export interface Gas {
  readonly o2: number;
  readonly he: number;
}

/** Dry air as the model uses it: 21% oxygen, 79% nitrogen (ZH-L16 convention). */
export const AIR: Gas = { o2: 0.21, he: 0 };
export const OXYGEN: Gas = { o2: 1, he: 0 };

/** Fraction of nitrogen, 0–1. */
export function nitrogenFraction(gas: Gas): number {
  // Rounded to a billionth so that 1 − 0.21 − 0 is 0.79 and nothing less tidy.
  return Math.round((1 - gas.o2 - gas.he) * 1e9) / 1e9;
}

/** What divers call the gas: `air`, `oxygen`, `32%`, `18/45`. Reads back as the same gas. */
export function gasName(gas: Gas): string {
  if (sameGas(gas, AIR)) return 'air';
  if (sameGas(gas, OXYGEN)) return 'oxygen';
  if (gas.he === 0) return `${percent(gas.o2)}%`;
  return `${percent(gas.o2)}/${percent(gas.he)}`;
}

/** Whether two gases are one, to a billionth of a fraction: what writing and reading may change. */
export function sameGas(one: Gas, other: Gas): boolean {
  return Math.abs(one.o2 - other.o2) < SAME_SHARE && Math.abs(one.he - other.he) < SAME_SHARE;
}

function percent(fraction: number): string {
  return String(Math.round(fraction * 1e6) / 1e4);
}
