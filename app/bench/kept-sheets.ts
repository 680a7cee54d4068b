import * as z from 'zod';
import { create } from 'zustand';
import { FAULTS_SEEN } from '@/lib/bench/bench-settings';
import { depthDeviations } from '@/lib/bench/deviations';
import { RULINGS, verdictOf } from '@/lib/bench/verdict';
import type { UnitSheet } from '@/lib/bench/write-sheet-csv';
import { keptRecord, type RecordKind } from '../keep/kept-record';
import { sheetSchema, type Sheet } from './sheet';

/** What a unit came to on a sheet, as it was judged when the sheet was kept. */
const outcomeSchema = z.object({
  unit: z.string().max(60),
  ruling: z.enum(RULINGS),
  /** The deviation of depth that was farthest from nought, m; null where no depth was read. */
  farthestM: z.number().nullable(),
  faults: z.array(z.enum(FAULTS_SEEN)),
});
export type Outcome = z.output<typeof outcomeSchema>;

const keptSheetSchema = z.object({
  id: z.string().max(60),
  keptAt: z.iso.datetime(),
  sheet: sheetSchema,
  outcomes: z.array(outcomeSchema),
});
export type KeptSheet = z.output<typeof keptSheetSchema>;

const MOST_SHEETS = 300;

const sheetsKind: RecordKind<readonly KeptSheet[]> = {
  name: 'halftime.bench-sheets',
  version: 1,
  schema: z
    .object({ version: z.literal(1), sheets: z.array(keptSheetSchema).max(MOST_SHEETS) })
    .transform(({ sheets }) => sheets),
  write: (sheets) => ({ version: 1, sheets }),
  words: {
    unread: 'The sheets that were kept can’t be read here, so their list begins anew.',
    refused: {
      full: 'There is no room left in this browser for another sheet: it lasts until the page is closed. Export it as CSV, or delete older sheets.',
      blocked:
        'This browser does not let the page keep anything, so kept sheets last until the page is closed. Export them as CSV.',
    },
    fileName: 'halftime-bench-sheets-unread.json',
  },
};

interface KeptSheets {
  /** The newest first. */
  readonly sheets: readonly KeptSheet[];
  /** Takes up what was kept, and hears of other windows until what it returns is called. */
  open: () => () => void;
  /** Keeps a sheet with what its units came to; returns the name it is kept under. */
  add: (sheet: Sheet, units: readonly UnitSheet[]) => string;
  remove: (id: string) => void;
  /** Puts one back that was removed. */
  putBack: (kept: KeptSheet) => void;
}

/** Sheets that were finished, kept on this machine: what a unit's history is read from. */
export const useKeptSheets = create<KeptSheets>()((set, get) => {
  const kept = keptRecord(sheetsKind, (sheets) => set({ sheets }));
  /** Other windows may have kept sheets meanwhile: each change is made to what is there now. */
  const follow = (change: (sheets: readonly KeptSheet[]) => readonly KeptSheet[]) => {
    const sheets = [...change(kept.isOthers() ? (kept.now() ?? []) : get().sheets)]
      .sort((one, other) => other.keptAt.localeCompare(one.keptAt))
      .slice(0, MOST_SHEETS);
    set({ sheets });
    kept.keep(sheets);
  };
  return {
    sheets: [],
    open() {
      set({ sheets: kept.now() ?? [] });
      return kept.listen();
    },
    add(sheet, units) {
      const id = crypto.getRandomValues(new Uint32Array(2)).join('-');
      const outcomes = units.map((unit) => outcomeOf(unit, sheet));
      follow((sheets) => [{ id, keptAt: new Date().toISOString(), sheet, outcomes }, ...sheets]);
      return id;
    },
    remove: (id) => follow((sheets) => sheets.filter((one) => one.id !== id)),
    putBack: (one) => follow((sheets) => [...sheets.filter(({ id }) => id !== one.id), one]),
  };
});

function outcomeOf({ unit, expected, readings }: UnitSheet, { settings }: Sheet): Outcome {
  const offM = depthDeviations(expected, readings, settings).flatMap(({ deviationM }) => deviationM ?? []);
  return {
    unit: unit.name,
    ruling: verdictOf(unit, expected, readings, settings, 'metric').ruling,
    farthestM: offM.reduce<number | null>(
      (farthest, one) => (farthest === null || Math.abs(one) > Math.abs(farthest) ? one : farthest),
      null,
    ),
    faults: [...new Set(Object.values(readings).flatMap(({ fault }) => fault ?? []))],
  };
}

/** A unit goes by its name, however it is spaced and whether in capitals or not. */
export function isSameUnit(one: string, other: string): boolean {
  const plain = (name: string) => name.trim().replace(/\s+/g, ' ').toLowerCase();
  return plain(one) === plain(other);
}
