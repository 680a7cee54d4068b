import { useMemo, useState } from 'react';
import { plainNumber, readNumber } from '@/lib/quantity/number';
import { accepted, refused, type Parsed } from '@/lib/quantity/parsed';
import type { UnitSystem } from '@/lib/quantity/unit-system';
import type { Calculator } from '@/lib/working/calculator';
import { carryThrough, changeableValues } from '@/lib/working/what-if/carry-through';
import type { DiveAgain } from '@/lib/working/what-if/dive-again';
import type { SymbolName, Working, WorkingValue } from '@/lib/working/working';
import { formulaPrinter, sayInFormula, shownUnit } from './print-quantity';

export interface WhatIf {
  readonly changeable: ReadonlyMap<SymbolName, WorkingValue>;
  /** The number that is being changed. */
  readonly symbol: SymbolName | undefined;
  readonly value: WorkingValue | undefined;
  /** What is in the box. */
  readonly text: string;
  readonly trouble: string | undefined;
  /** What would follow; nothing while no number is changed. */
  readonly carried: Working | undefined;
  choose(symbol: SymbolName): void;
  type(text: string): void;
  reset(): void;
}

/**
 * One number of a working put otherwise, and what would follow from it: a number of the dive, its unit or its model in
 * the whole dive, worked out anew, any other in the working alone. The working itself is not touched.
 */
export function useWhatIf(
  working: Working,
  calculator: Calculator | undefined,
  system: UnitSystem,
  onDive: DiveAgain | undefined,
): WhatIf {
  const [chosen, setChosen] = useState<SymbolName>();
  const [typed, setTyped] = useState<string>();
  const changeable = useMemo(() => onDive?.changeable ?? changeableValues(working), [working, onDive]);
  const symbol = chosen !== undefined && changeable.has(chosen) ? chosen : changeable.keys().next().value;
  const value = symbol === undefined ? undefined : changeable.get(symbol);
  const result = useMemo((): Parsed<Working> | undefined => {
    if (typed === undefined || !calculator || symbol === undefined || !value) return undefined;
    const number = readChange(typed, value, system);
    if (!number.ok) return number;
    return onDive?.with(symbol, number.value) ?? carryThrough(calculator, working, { [symbol]: number.value });
  }, [typed, calculator, symbol, value, system, working, onDive]);
  return {
    changeable,
    symbol,
    value,
    text: typed ?? (value ? formulaPrinter(system)(value).number.replace('−', '-') : ''),
    trouble: result && !result.ok ? `${result.what} ${result.mend}` : undefined,
    carried: result?.ok ? result.value : undefined,
    choose(next) {
      setChosen(next);
      setTyped(undefined);
    },
    type: setTyped,
    reset: () => setTyped(undefined),
  };
}

/** Reads a number typed in the unit a person reads, as one of the model's. */
function readChange(text: string, value: WorkingValue, system: UnitSystem): Parsed<number> {
  const read = readNumber(text);
  if (!read.ok) return read;
  const { size } = shownUnit(value.unit, system);
  const number = read.value.value * size;
  const [least, most] = value.within ?? [-Infinity, Infinity];
  // An end of the range is as it is printed, rounded.
  const rounding = 1e-6 * Math.max(1, Math.abs(number));
  if (number < least - rounding || number > most + rounding) {
    return refused(
      `${plainNumber(read.value.value)} makes no sense here.`,
      `Write a number from ${sayInFormula({ ...value, value: least }, system)} to ${sayInFormula({ ...value, value: most }, system)}.`,
    );
  }
  return accepted(Math.min(most, Math.max(least, number)));
}
