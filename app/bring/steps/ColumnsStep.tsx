'use client';

import { useState } from 'react';
import {
  ROLE_WORDS,
  ROLES,
  UNIT_WORDS,
  unitsOfRole,
  type ColumnUse,
  type CsvUnit,
  type Mapping,
} from '@/lib/files/csv/csv-mapping';
import { answerQuestion, type GuessedColumn, type Question } from '@/lib/files/csv/guess-columns';
import { Button } from '../../parts/Button';
import { Choice } from '../../parts/Choice';
import { useBring } from '../bring-context';
import { ColumnsPreview } from './ColumnsPreview';
import styles from '../bring.module.css';
import own from './columns.module.css';

const SEPARATOR_WORDS: Readonly<Record<string, string>> = {
  ',': 'commas',
  ';': 'semicolons',
  '\t': 'tabs',
  ' ': 'spaces',
  '|': 'bars',
};

/** How the columns of a CSV file were understood: the first rows as they will be read, what only a person can tell, and one place to change any of it. */
export function ColumnsStep() {
  const look = useBring((state) => state.look);
  const mapping = useBring((state) => state.mapping);
  const setMapping = useBring((state) => state.setMapping);
  const brought = useBring((state) => state.brought);
  const read = useBring((state) => state.read);
  const busy = useBring((state) => state.busy);
  const [chosen, setChosen] = useState(0);
  if (!look || look.kind !== 'csv' || !mapping) return null;
  const column = look.columns[chosen] ?? look.columns[0]!;
  const at = look.columns.indexOf(column);
  return (
    <section aria-labelledby="columns" className={`${styles.step} unprinted`}>
      <h2 id="columns">Its columns</h2>
      <p>
        {mapping.columns.length} columns parted by {SEPARATOR_WORDS[mapping.separator] ?? `“${mapping.separator}”`},
        with a decimal {mapping.decimal === ',' ? 'comma' : 'point'}; the first sample is in row {mapping.firstRow}.
        Below are its first rows: as they are written, and under that as they will be read.
      </p>
      {look.questions.map((question) => (
        <Asked
          key={question.id}
          question={question}
          mapping={mapping}
          onAnswer={(value) => setMapping(answerQuestion(mapping, question, value))}
        />
      ))}
      <ColumnsPreview
        names={look.columns.map(({ name }) => name)}
        columns={mapping.columns}
        chosen={at}
        onChoose={setChosen}
      />
      <ColumnIs column={column} use={mapping.columns[at]!} onChange={(use) => setMapping(withUse(mapping, at, use))} />
      {!brought && (
        <div className={styles.row}>
          <Button kind="primary" disabled={busy !== undefined} onClick={() => void read()}>
            Read it so
          </Button>
        </div>
      )}
    </section>
  );
}

/** The one place to say what a column is. */
function ColumnIs({
  column,
  use,
  onChange,
}: {
  column: GuessedColumn;
  use: ColumnUse;
  onChange: (use: ColumnUse) => void;
}) {
  const units = unitsOfRole(use.role);
  return (
    <fieldset className={own.columnIs}>
      <legend>The column “{column.name}” is</legend>
      <Choice
        label={`Meaning of “${column.name}”`}
        value={use.role}
        options={ROLES.map((role) => ({ value: role, label: ROLE_WORDS[role] }))}
        onChange={(role) => onChange({ role, unit: role === column.role ? column.unit : unitsOfRole(role)[0]! })}
      />
      {units.length > 1 && (
        <Choice
          label={`Unit of “${column.name}”`}
          value={use.unit}
          options={units.map((unit) => ({ value: unit, label: UNIT_WORDS[unit] }))}
          onChange={(unit: CsvUnit) => onChange({ ...use, unit })}
        />
      )}
      <p>Press the head of another column above to say what that one is.</p>
    </fieldset>
  );
}

/** A mapping with another use of one column; a meaning is had by one column, so it leaves the one that had it. */
function withUse(mapping: Mapping, at: number, use: ColumnUse): Mapping {
  const columns = mapping.columns.map((own, i): ColumnUse => {
    if (i === at) return use;
    return own.role === use.role ? { role: 'ignored', unit: 'none' } : own;
  });
  return { ...mapping, columns };
}

function Asked({
  question,
  mapping,
  onAnswer,
}: {
  question: Question;
  mapping: Mapping;
  onAnswer: (value: string) => void;
}) {
  return (
    <Choice
      label={question.ask}
      hint={question.why}
      value={answerNow(question, mapping)}
      options={question.choices.map(({ value, label }) => ({
        value,
        label: value === question.guess ? `${label} (likeliest)` : label,
      }))}
      onChange={onAnswer}
    />
  );
}

/** The answer the mapping stands for now. */
function answerNow({ id, guess }: Question, mapping: Mapping): string {
  const [about, which = ''] = id.split(/:(.*)/s);
  if (about === 'decimal') return mapping.decimal;
  if (about === 'use') return mapping.columns[Number(which.split(',')[0])]?.role ?? guess;
  if (about === 'unit') return mapping.columns[Number(which.split(',')[0])]?.unit ?? guess;
  const index = mapping.columns.findIndex(({ role }) => role === which);
  return index < 0 ? guess : String(index);
}
