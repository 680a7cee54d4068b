import { useId, type RefObject } from 'react';
import type { UnitSystem } from '@/lib/quantity/unit-system';
import type { DiveAgain } from '@/lib/working/what-if/dive-again';
import type { SymbolName, Working } from '@/lib/working/working';
import { Button } from '../Button';
import { Disclosure } from '../Disclosure';
import { sayAnswer, sayInFormula, shownUnit } from './print-quantity';
import type { WhatIf } from './use-what-if';
import fields from '../Field.module.css';
import styles from './working.module.css';

interface WhatIfFormProps {
  working: Working;
  whatIf: WhatIf;
  fixed: DiveAgain['fixed'] | undefined;
  units: UnitSystem;
  box: RefObject<HTMLInputElement | null>;
}

/** Where one number of a working is put otherwise, and what would come of it beside what is so. */
export function WhatIfForm({ working, whatIf, fixed, units, box }: WhatIfFormProps) {
  const id = useId();
  const { changeable, symbol, value, text, trouble, carried } = whatIf;
  if (symbol === undefined || !value) return null;
  const folded = historySymbols(working);
  const options = [...changeable].map(([name, { meaning }]) => ({ name, meaning, folded: folded.has(name) }));
  return (
    <section className={`${styles.whatIf} ${carried ? '' : 'unprinted'}`} aria-labelledby={`${id}-title`}>
      <h3 id={`${id}-title`}>What if</h3>
      <div className={styles.change}>
        <span className={fields.field}>
          <label htmlFor={`${id}-which`}>The number to change</label>
          <span className={fields.box}>
            <select id={`${id}-which`} value={symbol} onChange={(event) => whatIf.choose(event.target.value)}>
              {options.map(({ name, meaning, folded: earlier }) => (
                <option key={name} value={name}>
                  {earlier ? `${meaning} (how it got there)` : meaning}
                </option>
              ))}
            </select>
          </span>
        </span>
        <span className={fields.field}>
          <label htmlFor={`${id}-number`}>were</label>
          <span className={fields.box}>
            <input
              ref={box}
              id={`${id}-number`}
              inputMode="decimal"
              autoComplete="off"
              value={text}
              aria-invalid={trouble ? true : undefined}
              aria-describedby={`${id}-trouble`}
              onChange={(event) => whatIf.type(event.target.value)}
            />
            <span className={fields.unit}>{shownUnit(value.unit, units).name}</span>
          </span>
        </span>
        <Button aria-disabled={!carried && !trouble} onClick={whatIf.reset}>
          Reset
        </Button>
      </div>
      <p id={`${id}-trouble`} className={fields.error} role="alert">
        {trouble}
      </p>
      <p role="status" className={styles.followed}>
        {carried ? (
          <>
            What if {value.meaning} were{' '}
            {sayInFormula({ ...value, value: changedTo(carried, symbol, value.value) }, units)}, and not{' '}
            {sayInFormula(value, units)}? It would be <b>{sayAnswer(carried.answer, units)}</b>
            {carried.compartment !== undefined &&
              carried.compartment !== working.compartment &&
              ` (compartment ${carried.compartment})`}{' '}
            instead of {sayAnswer(working.answer, units)}. The dive is as it was.
          </>
        ) : (
          'Change one number and see what would follow. The dive stays as it is.'
        )}
      </p>
      {fixed && fixed.size > 0 && (
        <div className="unprinted">
          <Disclosure summary="Numbers that stand as they are, and why">
            <dl className={styles.values}>
              {reasonsOf(fixed).map(([why, meanings]) => (
                <div key={why}>
                  <dt>{why}</dt>
                  <dd>{meanings.join('; ')}</dd>
                </div>
              ))}
            </dl>
          </Disclosure>
        </div>
      )}
    </section>
  );
}

/** What a number is in the working with the change: a script says a depth no finer than to its own rounding. */
function changedTo({ steps }: Working, symbol: SymbolName, otherwise: number): number {
  return steps.find(({ values }) => values[symbol])?.values[symbol]?.value ?? otherwise;
}

/** Each reason once, with the numbers it holds for. */
function reasonsOf(fixed: DiveAgain['fixed']): (readonly [string, string[]])[] {
  const reasons = new Map<string, Set<string>>();
  for (const { value, why } of fixed.values()) reasons.set(why, (reasons.get(why) ?? new Set()).add(value.meaning));
  return [...reasons].map(([why, meanings]) => [why, [...meanings]] as const);
}

/** Symbols that stand in folded steps alone. */
function historySymbols({ steps }: Working): ReadonlySet<SymbolName> {
  const folded = new Set<SymbolName>();
  for (const { group, values } of steps) if (group) Object.keys(values).forEach((symbol) => folded.add(symbol));
  for (const { group, values } of steps) if (!group) Object.keys(values).forEach((symbol) => folded.delete(symbol));
  return folded;
}
