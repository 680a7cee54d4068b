'use client';

import { parseGas, writeGas } from '@/lib/dive/gas-text';
import { readGradientFactors } from '@/lib/dive/script/settings/setting-values';
import type { GradientFactors } from '@/lib/dive/dive';
import type { Gas } from '@/lib/physics/gas';
import { sayDepth } from '@/lib/quantity/depth';
import { writeTime } from '@/lib/quantity/duration';
import { printFactors } from '@/lib/quantity/percent';
import { usePreferences } from '../../parts/preferences';
import { TypedValue } from '../../parts/TypedValue';
import { parseBottomDepth, parseBottomTime } from './bottom-values';

/* What plates of a dive let one type of it: each follows the typing. */

interface FieldProps<Value> {
  readonly value: Value;
  readonly onValue: (value: Value) => void;
}

export function DepthField({ label, value, onValue }: FieldProps<number> & { readonly label: string }) {
  const units = usePreferences((state) => state.units);
  return <TypedValue label={label} shown={sayDepth(value, units)} parse={parseBottomDepth} live onValue={onValue} />;
}

/** A time at depth, s. */
export function TimeField({
  label,
  hint,
  value,
  onValue,
}: FieldProps<number> & { readonly label: string; readonly hint?: string | undefined }) {
  return (
    <TypedValue label={label} shown={writeTime(value)} parse={parseBottomTime} live onValue={onValue} hint={hint} />
  );
}

export function GasField({ value, onValue }: FieldProps<Gas>) {
  return <TypedValue label="Gas" shown={writeGas(value)} parse={parseGas} live onValue={onValue} />;
}

export function FactorsField({ value, onValue }: FieldProps<GradientFactors>) {
  return (
    <TypedValue
      label="Gradient factors"
      shown={printFactors(value)}
      parse={readGradientFactors}
      live
      onValue={onValue}
    />
  );
}
