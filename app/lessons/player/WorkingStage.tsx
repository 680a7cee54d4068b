'use client';

import '../../parts/formulas.css';
import { useEffect, useMemo, useState } from 'react';
import { printClock } from '@/lib/quantity/duration';
import { atMost } from '@/lib/quantity/number';
import type { LessonScript } from '@/lib/lesson/lesson';
import { subjectOfScript } from '@/lib/lesson/lesson-world';
import { DEFAULT_RULES } from '@/lib/rules/all';
import { sampleAt } from '@/lib/dive/timeline';
import { workingFor, READING_IDS } from '@/lib/working/all';
import { stepMathml, type PrintQuantity } from '@/lib/working/formula';
import type { Quantity, Unit, Working, WorkingStep } from '@/lib/working/working';
import { METRES_PER_FOOT } from '@/lib/quantity/length';
import { BAR_PER_PSI } from '@/lib/quantity/pressure';
import type { UnitSystem } from '@/lib/quantity/unit-system';
import { DataTable } from '../../parts/DataTable';
import { Disclosure } from '../../parts/Disclosure';
import { usePreferences } from '../../parts/preferences';
import styles from './working.module.css';

interface WorkingStageProps {
  script: LessonScript;
  reading: string;
  atS: number;
}

/** The working behind one reading at one moment: every step with its formula and the numbers put in. */
export function WorkingStage({ script, reading, atS }: WorkingStageProps) {
  const units = usePreferences((state) => state.units);
  const working = useMemo(() => workingAt(script, reading, atS), [script, reading, atS]);
  const history = working.steps.filter(({ group }) => group === 'history');
  const rest = working.steps.filter(({ group }) => group !== 'history');
  return (
    <section className={styles.working} aria-label={working.title}>
      <h3>
        {working.title}, at {printClock(atS)}
      </h3>
      <p className={styles.answer}>
        <b>{sayQuantity(working.answer, units)}</b>. {working.answer.text}
      </p>
      {history.length > 0 && (
        <Disclosure summary={`How it got to where it is, in ${history.length} steps`}>
          <Steps steps={history} units={units} />
        </Disclosure>
      )}
      <Steps steps={rest} units={units} />
      {working.table && <SixteenTable table={working.table} units={units} />}
      {working.cautions?.map((caution) => (
        <p key={caution} role="note">
          {caution}
        </p>
      ))}
    </section>
  );
}

function workingAt(script: LessonScript, reading: string, atS: number): Working {
  const { timeline, figures } = subjectOfScript(script.script, DEFAULT_RULES).truth;
  const id = READING_IDS.find((one) => one === reading) ?? 'no-stop';
  return workingFor(id, timeline, figures, sampleAt(timeline, atS));
}

function Steps({ steps, units }: { steps: readonly WorkingStep[]; units: UnitSystem }) {
  return (
    <ol className={styles.steps}>
      {steps.map((step) => (
        <li key={step.id}>
          <h4>{step.title}</h4>
          <p>{step.why}</p>
          <Formula step={step} units={units} />
          <dl className={styles.values}>
            {Object.entries(step.values).map(([symbol, value]) => (
              <div key={symbol}>
                <dt>{value.meaning}</dt>
                <dd>{sayQuantity(value, units)}</dd>
              </div>
            ))}
          </dl>
          <p className={styles.source}>{step.source}</p>
        </li>
      ))}
    </ol>
  );
}

function Formula({ step, units }: { step: WorkingStep; units: UnitSystem }) {
  const [html, setHtml] = useState<readonly string[]>([]);
  useEffect(() => {
    let here = true;
    const print = printer(units);
    void Promise.all([stepMathml(step, { withNumbers: false }), stepMathml(step, { withNumbers: true, print })]).then((made) => {
      if (here) setHtml(made);
    });
    return () => {
      here = false;
    };
  }, [step, units]);
  return (
    <div className={styles.formula} tabIndex={0} role="group" aria-label="Formula">
      {html.map((mathml, index) => (
        <div key={index} dangerouslySetInnerHTML={{ __html: mathml }} />
      ))}
    </div>
  );
}

function SixteenTable({ table, units }: { table: NonNullable<Working['table']>; units: UnitSystem }) {
  const columns = table.columns.map(({ title, unit }, index) => ({
    heading: unit === '' ? title : `${title}, ${unitIn(unit, units)}`,
    numeric: index > 0,
    cell: ({ row, marked }: { row: readonly (number | string)[]; marked: boolean }) => {
      const cell = row[index]!;
      const text = typeof cell === 'number' ? printNumber(cell, unit, units) : cell;
      return marked ? <b>{text}</b> : text;
    },
  }));
  return <DataTable caption={table.caption} captionShown columns={columns} rows={table.rows.map((row, index) => ({ row, marked: index === table.marked }))} />;
}

/** Sizes of the imperial units in the model's. */
const IMPERIAL: Partial<Readonly<Record<Unit, readonly [string, number]>>> = {
  m: ['ft', METRES_PER_FOOT],
  bar: ['psi', BAR_PER_PSI],
  'm/min': ['ft/min', METRES_PER_FOOT],
  'bar/min': ['psi/min', BAR_PER_PSI],
  'bar/m': ['psi/ft', BAR_PER_PSI / METRES_PER_FOOT],
  '1/bar': ['1/psi', 1 / BAR_PER_PSI],
};

function unitIn(unit: Unit, system: UnitSystem): string {
  return (system === 'imperial' ? IMPERIAL[unit]?.[0] : undefined) ?? unit;
}

function printNumber(value: number, unit: Unit, system: UnitSystem): string {
  const size = (system === 'imperial' ? IMPERIAL[unit]?.[1] : undefined) ?? 1;
  if (!Number.isFinite(value)) return '∞';
  return atMost(Number((value / size).toPrecision(5)), 6);
}

function printer(system: UnitSystem): PrintQuantity {
  return ({ value, unit }) => ({ number: printNumber(value, unit, system), unit: unitIn(unit, system) });
}

function sayQuantity({ value, unit }: Quantity, system: UnitSystem): string {
  return `${printNumber(value, unit, system)} ${unitIn(unit, system)}`.trim();
}
