'use client';

import '../formulas.css';
import { useCallback, useDeferredValue, useMemo, useRef, type ReactNode } from 'react';
import { cautions } from '@/content/cautions';
import type { DiveAgain } from '@/lib/working/what-if/dive-again';
import type { SymbolName, Working, WorkingStep } from '@/lib/working/working';
import { Button } from '../Button';
import { DataTable } from '../DataTable';
import { Disclosure } from '../Disclosure';
import { usePreferences } from '../preferences';
import { sayAnswer, sayDeciding, tableColumns } from './print-quantity';
import { isChanged, StepList } from './StepList';
import { useTypesetter } from './use-typesetter';
import { useWhatIf } from './use-what-if';
import { WhatIfForm } from './WhatIfForm';
import { WorkingSheet } from './WorkingSheet';
import folds from '../folds.module.css';
import styles from './working.module.css';

interface WorkingPanelProps {
  working: Working;
  /** When it holds and by which unit: "At 12:30". */
  where?: string;
  onClose: () => void;
  /** Works a changed number out on the dive. */
  onDive?: DiveAgain;
  /** What may be asked next, at the end. */
  next?: ReactNode;
}

/** The reasoning behind one reading, on a sheet beside what is asked about. */
export function WorkingPanel({ working, where, onDive, onClose, next }: WorkingPanelProps) {
  return (
    <WorkingSheet title={`Why? ${working.title}`} where={where} onClose={onClose}>
      <WorkingBody working={working} {...(onDive && { onDive })} />
      {next && <p className="unprinted">{next}</p>}
      <p className="unprinted">
        <Button icon="print" onClick={() => window.print()}>
          Print this working
        </Button>
      </p>
    </WorkingSheet>
  );
}

interface BodyProps extends Pick<WorkingPanelProps, 'working' | 'onDive'> {
  /** Whether each step is its name and its result, and the rest is opened. */
  folded?: boolean;
}

/** The answer, and the reasoning behind it once the page has shown the rest: a press is answered in the next frame. */
export function WorkingBody(props: BodyProps) {
  const due = useDeferredValue(true, false);
  return (
    <>
      {/* There before the answer, so that whoever listens hears it come. */}
      <div role="status">{due ? <Answer {...props} /> : <p>Working it out…</p>}</div>
      {due && <Reasoning {...props} />}
    </>
  );
}

/** What decides, and what comes of it. */
function Answer({ working }: Pick<WorkingPanelProps, 'working'>) {
  const units = usePreferences((state) => state.units);
  const { answer } = working;
  return (
    <p className={styles.answer}>
      {working.deciding?.map(({ step, word }) => (
        <span key={step}>
          {sayDeciding(working.steps.find(({ id }) => id === step)!.result, units)} {word}
          <span className="spoken">, </span>
          <span aria-hidden="true"> → </span>
        </span>
      ))}
      <b>{sayAnswer(answer, units)}</b>
      {answer.at && ` at ${sayAnswer(answer.at, units)}`}
      {working.compartment !== undefined &&
        !working.reading.startsWith('tension') &&
        ` (compartment ${working.compartment})`}
      . {answer.text}
    </p>
  );
}

const CHAIN = 'From what is known to what is shown';

/** Each step, the sixteen, what would follow from another number, and what to mind. */
function Reasoning({ working, onDive, folded = false }: BodyProps) {
  const units = usePreferences((state) => state.units);
  const { typesetter, failed, tryAgain } = useTypesetter();
  const whatIf = useWhatIf(working, typesetter?.calculator, units, onDive);
  const box = useRef<HTMLInputElement>(null);
  const shown = whatIf.carried ?? working;
  const numbers = useMemo(() => new Map(shown.steps.map(({ id }, index) => [id as string, index + 1])), [shown]);
  const known = useMemo(() => new Map(working.steps.map((step) => [step.id, step])), [working]);
  const { choose } = whatIf;
  const change = useCallback(
    (symbol: SymbolName) => {
      choose(symbol);
      const fold = box.current?.closest('details');
      if (fold) fold.open = true;
      box.current?.focus();
      box.current?.select();
    },
    // Choosing only sets state: which of its closures is called makes no difference.
    // oxlint-disable-next-line react/exhaustive-deps
    [],
  );
  const list = (steps: readonly WorkingStep[]) => (
    <StepList
      steps={steps}
      so={working.steps}
      numbers={numbers}
      typesetter={typesetter}
      units={units}
      onChange={change}
      folded={folded}
    />
  );
  // Through the working alone nothing is known of the other compartments: their table stays that of the dive.
  const { table = working.table } = shown;

  const sixteenTitle = `${table?.rows.length === 16 ? 'All sixteen' : 'Side by side'}${!whatIf.carried ? '' : shown.table ? ', what if' : ', as dived'}`;
  const sixteen = table && (
    <>
      <p>{table.caption}.</p>
      <DataTable
        caption={table.caption}
        columns={tableColumns(table, units, 'this one')}
        rows={table.rows}
        marked={table.marked}
      />
    </>
  );

  const chain = runsOf(shown.steps).map(({ grouped, steps }) =>
    grouped ? (
      <Disclosure
        key={steps[0]!.id}
        summary={`How it got there: ${steps.length} ${steps.length === 1 ? 'step' : 'steps'}${steps.some((step) => isChanged(step, known.get(step.id))) ? ', changed by your what-if' : ''}`}
      >
        {list(steps)}
      </Disclosure>
    ) : (
      <div key={steps[0]!.id}>{list(steps)}</div>
    ),
  );
  const whatIfForm = <WhatIfForm working={working} whatIf={whatIf} fixed={onDive?.fixed} units={units} box={box} />;
  const minded = (
    <ul className={styles.cautions}>
      {working.cautions?.map((caution) => (
        <li key={caution}>{caution}</li>
      ))}
      <li>{cautions.unknown}</li>
      <li>{cautions.general}</li>
    </ul>
  );

  return (
    <>
      {failed && (
        <p role="alert">
          The formulas could not be set; they stand as plain text. You may be offline.{' '}
          <Button onClick={tryAgain}>Try again</Button>
        </p>
      )}
      <section className={styles.chain} aria-label="Steps">
        {folded ? <Disclosure summary={CHAIN}>{chain}</Disclosure> : <h3>{CHAIN}</h3>}
        {!folded && chain}
      </section>
      {folded ? (
        <div className={folds.folds}>
          {sixteen && <Disclosure summary={sixteenTitle}>{sixteen}</Disclosure>}
          <Disclosure summary="What if?">{whatIfForm}</Disclosure>
          <Disclosure summary="What to mind">{minded}</Disclosure>
        </div>
      ) : (
        <>
          {sixteen && (
            <section className={styles.table}>
              <h3>{sixteenTitle}</h3>
              {sixteen}
            </section>
          )}
          {whatIfForm}
          {minded}
        </>
      )}
    </>
  );
}

/** Neighbouring steps that are all folded away, or all not. */
function runsOf(steps: readonly WorkingStep[]): { grouped: boolean; steps: WorkingStep[] }[] {
  const runs: { grouped: boolean; steps: WorkingStep[] }[] = [];
  for (const step of steps) {
    const grouped = step.group !== undefined;
    const last = runs.at(-1);
    if (last?.grouped === grouped) last.steps.push(step);
    else runs.push({ grouped, steps: [step] });
  }
  return runs;
}
