import { memo } from 'react';
import type { UnitSystem } from '@/lib/quantity/unit-system';
import type { Typesetter } from '@/lib/working/formula';
import type { SymbolName, WorkingStep, WorkingValue } from '@/lib/working/working';
import { Button } from '../Button';
import { Disclosure } from '../Disclosure';
import { formulaPrinter, sayInFormula } from './print-quantity';
import formulas from './formula.module.css';
import styles from './working.module.css';
import { capital } from '@/lib/quantity/capital';

interface StepListProps {
  steps: readonly WorkingStep[];
  /** The same steps as they are without the number changed. */
  so: readonly WorkingStep[];
  /** Number of each step by its id. */
  numbers: ReadonlyMap<string, number>;
  typesetter: Typesetter | undefined;
  units: UnitSystem;
  onChange: (symbol: SymbolName) => void;
  /** Whether each step is its name and its result, and the rest is opened. */
  folded: boolean;
}

/** Steps of a working in order: what and why, the formula, the same with numbers, what its letters mean, and the source. */
export function StepList({ steps, so, numbers, typesetter, units, onChange, folded }: StepListProps) {
  const known = new Map(so.map((step) => [step.id, step]));
  return (
    <ol className={styles.steps} data-folded={folded || undefined}>
      {steps.map((step) => (
        <Step
          key={step.id}
          step={step}
          so={known.get(step.id)}
          numbers={numbers}
          typesetter={typesetter}
          units={units}
          onChange={onChange}
          folded={folded}
        />
      ))}
    </ol>
  );
}

interface StepProps extends Omit<StepListProps, 'steps' | 'so'> {
  step: WorkingStep;
  /** Undefined where the working has no such step without the change. */
  so: WorkingStep | undefined;
}

const Step = memo(function Step({ step, so, numbers, typesetter, units, onChange, folded }: StepProps) {
  const changed = isChanged(step, so);
  const print = formulaPrinter(units);
  const title = (
    <>
      <span className={styles.number}>{numbers.get(step.id)}.</span> {capital(step.title)}
      {changed && <span className={styles.mark}> what if</span>}
    </>
  );
  const shown = (
    <>
      <p>{step.why}</p>
      {typesetter ? (
        <div className={formulas.formula} role="group" aria-label={`Formula: ${step.title}`} tabIndex={0}>
          <Mathml html={typesetter.step(step, { withNumbers: false }).join('')} />
          <Mathml html={typesetter.step(step, { withNumbers: true, print }).join('')} />
        </div>
      ) : (
        <p className={formulas.formula}>
          <code>{`${step.symbol} = ${step.expression} = ${sayInFormula(step.result, units)}`}</code>
        </p>
      )}
      {changed && so && <p className={styles.was}>As dived: {sayInFormula(so.result, units)}.</p>}
      <dl className={styles.values}>
        {Object.entries(step.values).map(([symbol, value]) => (
          <div key={symbol}>
            <dt>{typesetter ? <Mathml html={typesetter.symbol(symbol)} /> : <code>{symbol}</code>}</dt>
            <dd>
              {value.meaning}, {sayInFormula(value, units)}
              {value.at && ` at ${sayInFormula(value.at, units)}`}
              <span className={styles.origin}> ({originText(value, numbers)})</span>
              {value.changeable && (
                <span className="unprinted">
                  {' '}
                  <Button
                    kind="quiet"
                    aria-label={`What if ${value.meaning} were another?`}
                    onClick={() => onChange(symbol)}
                  >
                    what if?
                  </Button>
                </span>
              )}
            </dd>
          </div>
        ))}
      </dl>
      <p className={styles.source}>Source: {step.source}.</p>
    </>
  );
  return (
    <li className={changed ? styles.changed : undefined}>
      {folded ? (
        <Disclosure
          summary={
            <span>
              {title}: {sayInFormula(step.result, units)}
            </span>
          }
        >
          {shown}
        </Disclosure>
      ) : (
        <>
          <h4>{title}</h4>
          {shown}
        </>
      )}
    </li>
  );
});

/** Nearer than this two numbers are one, worked out from other samples of the same dive; relative beyond 1. */
const ROUNDING = 1e-9;

/** Whether a step says anything else than it does without the change. */
export function isChanged(step: WorkingStep, so: WorkingStep | undefined): boolean {
  if (step === so) return false;
  if (!so || step.expression !== so.expression || !isSame(step.result.value, so.result.value)) return true;
  return Object.entries(step.values).some(([symbol, { value }]) => !isSame(value, so.values[symbol]?.value));
}

function isSame(one: number, other: number | undefined): boolean {
  return Object.is(one, other) || Math.abs(one - (other ?? NaN)) <= ROUNDING * Math.max(1, Math.abs(one));
}

/** Formulas made from the project's own symbols and numbers: nothing anyone typed as text is in them. */
function Mathml({ html }: { html: string }) {
  return <span className={formulas.mathml} dangerouslySetInnerHTML={{ __html: html }} />;
}

const ORIGINS = {
  dive: 'from the dive',
  setting: 'a setting',
  'common practice': 'common practice, no source',
  search: 'found by trying',
} as const;
const OBTAINED = {
  read: 'published, read in a source',
  'from memory': 'published, from memory',
  derived: 'published, derived',
  'common practice': 'common practice',
} as const;

function originText({ from, obtained }: WorkingValue, numbers: ReadonlyMap<string, number>): string {
  if (from.startsWith('step:')) return `step ${numbers.get(from)}`;
  if (from === 'published') return obtained ? OBTAINED[obtained] : 'published';
  return ORIGINS[from as keyof typeof ORIGINS];
}
