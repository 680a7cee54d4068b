'use client';

import { useEffect } from 'react';
import { printDeviation } from '@/lib/bench/bench-words';
import { RULING_WORDS } from '@/lib/bench/verdict';
import { Button } from '../parts/Button';
import { DataTable } from '../parts/DataTable';
import { Disclosure } from '../parts/Disclosure';
import { usePreferences } from '../parts/preferences';
import { useStatus } from '../parts/status';
import { useBench } from './bench-context';
import { isSameUnit, useKeptSheets, type KeptSheet, type Outcome } from './kept-sheets';
import styles from './bench.module.css';

/** What sheets kept on this machine tell: the history of each unit on show, and every sheet, to be opened again. */
export function KeptSheets() {
  const sheets = useKeptSheets((state) => state.sheets);
  const open = useKeptSheets((state) => state.open);
  const units = useBench((state) => state.units);
  useEffect(() => open(), [open]);
  if (sheets.length === 0) return null;
  const histories = units
    .map(({ name }) => ({ name, rows: historyOf(name, sheets) }))
    .filter(({ rows }) => rows.length > 0);
  return (
    <section aria-labelledby="kept-sheets" className={`${styles.step} ${styles.unprinted}`}>
      <h2 id="kept-sheets">Sheets kept on this machine</h2>
      {histories.map(({ name, rows }) => (
        <UnitHistory key={name} name={name} rows={rows} />
      ))}
      <Disclosure summary={sheets.length === 1 ? 'The one sheet kept' : `All ${sheets.length} sheets kept`}>
        <SheetList sheets={sheets} />
      </Disclosure>
    </section>
  );
}

interface Earlier {
  readonly kept: KeptSheet;
  readonly outcome: Outcome;
}

function historyOf(name: string, sheets: readonly KeptSheet[]): Earlier[] {
  return sheets.flatMap((kept) => {
    const outcome = kept.outcomes.find(({ unit }) => isSameUnit(unit, name));
    return outcome ? [{ kept, outcome }] : [];
  });
}

function UnitHistory({ name, rows }: { name: string; rows: readonly Earlier[] }) {
  const units = usePreferences((preferences) => preferences.units);
  return (
    <DataTable
      caption={`${name} on earlier sheets`}
      captionShown
      rows={rows}
      columns={[
        { heading: 'Date', cell: ({ kept }) => <span className={styles.whole}>{dayOf(kept)}</span> },
        { heading: 'What came of it', cell: ({ outcome }) => RULING_WORDS[outcome.ruling] },
        {
          heading: 'Depth off by, at the most',
          numeric: true,
          cell: ({ outcome: { farthestM } }) => (
            <span className={styles.whole}>{farthestM === null ? 'not read' : printDeviation(farthestM, units)}</span>
          ),
        },
        {
          heading: 'Faults seen',
          cell: ({ outcome: { faults } }) => (faults.length === 0 ? 'none' : faults.join(', ')),
        },
        { heading: 'Who ran it', cell: ({ kept }) => kept.sheet.about.operator || '–' },
        { heading: 'Gauge', cell: ({ kept }) => kept.sheet.about.gauge || '–' },
      ]}
    />
  );
}

function SheetList({ sheets }: { sheets: readonly KeptSheet[] }) {
  const change = useBench((state) => state.change);
  const undo = useBench((state) => state.undo);
  const remove = useKeptSheets((state) => state.remove);
  const putBack = useKeptSheets((state) => state.putBack);
  const say = useStatus((status) => status.say);
  const show = (kept: KeptSheet) => {
    change(kept.sheet);
    say(`The sheet of ${dayOf(kept)} is on show.`, { label: 'Undo', run: undo });
  };
  const drop = (kept: KeptSheet) => {
    remove(kept.id);
    say(`The sheet of ${dayOf(kept)} is deleted.`, { label: 'Undo', run: () => putBack(kept) });
  };
  return (
    <DataTable
      caption="Sheets kept"
      rows={sheets}
      columns={[
        { heading: 'Date', cell: dayOf },
        {
          heading: 'Units',
          cell: ({ outcomes }) => outcomes.map(({ unit, ruling }) => `${unit}: ${RULING_WORDS[ruling]}`).join('; '),
        },
        { heading: 'Who ran it', cell: ({ sheet }) => sheet.about.operator || '–' },
        {
          heading: <span className="spoken">What to do with it</span>,
          cell: (kept) => (
            <span className={styles.row}>
              <Button aria-label={`Show the sheet of ${dayOf(kept)}`} onClick={() => show(kept)}>
                Show
              </Button>
              <Button kind="quiet" aria-label={`Delete the sheet of ${dayOf(kept)}`} onClick={() => drop(kept)}>
                Delete
              </Button>
            </span>
          ),
        },
      ]}
    />
  );
}

/** The date its writer gave it, else the day it was kept. */
function dayOf({ sheet, keptAt }: KeptSheet): string {
  return sheet.about.date || keptAt.slice(0, 10);
}
