'use client';

import {
  ROLES,
  UNIT_WORDS,
  unitsOfRole,
  type ColumnUse,
  type CsvUnit,
  type Mapping,
  type Role,
} from '@/lib/files/csv/csv-mapping';
import { answerQuestion, type GuessedColumn, type Question } from '@/lib/files/csv/guess-columns';
import { Button } from '../parts/Button';
import { Choice } from '../parts/Choice';
import { Disclosure } from '../parts/Disclosure';
import { useBring } from './bring-context';
import styles from './bring.module.css';

const ROLE_WORDS: Readonly<Record<Role, string>> = {
  time: 'time',
  depth: 'depth',
  dive: 'number of the dive',
  gas: 'gas',
  oxygen: 'oxygen',
  helium: 'helium',
  temperature: 'temperature',
  noStop: 'no-stop time the unit showed',
  ceiling: 'ceiling the unit showed',
  stopDepth: 'stop depth the unit showed',
  stopTime: 'stop time the unit showed',
  ignored: 'leave it out',
};

const SEPARATOR_WORDS: Readonly<Record<string, string>> = {
  ',': 'commas',
  ';': 'semicolons',
  '\t': 'tabs',
  ' ': 'spaces',
  '|': 'bars',
};

/** How the columns of a CSV file were understood: what only a person can tell is asked, the rest can be changed. */
export function ColumnsStep() {
  const look = useBring((state) => state.look);
  const mapping = useBring((state) => state.mapping);
  const setMapping = useBring((state) => state.setMapping);
  const brought = useBring((state) => state.brought);
  const read = useBring((state) => state.read);
  const busy = useBring((state) => state.busy);
  if (!look || look.kind !== 'csv' || !mapping) return null;
  const change = (index: number, use: ColumnUse) =>
    setMapping({ ...mapping, columns: mapping.columns.map((own, i) => (i === index ? use : own)) });
  return (
    <section aria-labelledby="columns" className={styles.step}>
      <h2 id="columns">Its columns</h2>
      <p>
        {mapping.columns.length} columns parted by {SEPARATOR_WORDS[mapping.separator] ?? `“${mapping.separator}”`},
        with a decimal {mapping.decimal === ',' ? 'comma' : 'point'}; the first sample is in row {mapping.firstRow}.
      </p>
      {look.questions.map((question) => (
        <Asked
          key={question.id}
          question={question}
          mapping={mapping}
          onAnswer={(value) => setMapping(answerQuestion(mapping, question, value))}
        />
      ))}
      <Disclosure summary="What each column was taken for" open={look.questions.length > 0}>
        <ul className={styles.columns}>
          {look.columns.map((column, index) => (
            <li key={index}>
              <p>
                <strong>{column.name}</strong>
                <span className={styles.soft}>{column.examples.join(', ')}, …</span>
              </p>
              <ColumnChoice column={column} use={mapping.columns[index]!} onChange={(use) => change(index, use)} />
            </li>
          ))}
        </ul>
      </Disclosure>
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

function ColumnChoice({
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
    <div className={styles.columnChoice}>
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
    </div>
  );
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
  const [about, which = ''] = id.split(':');
  if (about === 'decimal') return mapping.decimal;
  if (about === 'unit') return mapping.columns[Number(which.split(',')[0])]?.unit ?? guess;
  const index = mapping.columns.findIndex(({ role }) => role === which);
  return index < 0 ? guess : String(index);
}
