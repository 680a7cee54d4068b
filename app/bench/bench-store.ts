import * as z from 'zod';
import { create } from 'zustand';
import { readyRuns } from '@/content/bench/runs';
import {
  benchSettingsSchema,
  benchUnitSchema,
  DEFAULT_BENCH,
  MOST_UNITS,
  readingSchema,
  type BenchSettings,
  type BenchUnit,
  type Reading,
} from '@/lib/bench/bench-settings';
import { keptRecord } from '../keep/kept-record';
import { useStatus } from '../parts/status';

/** A sheet: the run, the chamber, the units in it and what they showed. Kept in this browser as it is filled in. */
const sheetSchema = z.object({
  script: z.string().max(200_000),
  settings: benchSettingsSchema,
  units: z.array(benchUnitSchema).max(MOST_UNITS),
  /** By unit, then by the name of the checkpoint. */
  readings: z.record(z.string(), z.record(z.string(), readingSchema)),
  /** When each step of a live run was begun, s since 1970. */
  marks: z.array(z.number()).max(5000),
});
export type Sheet = z.output<typeof sheetSchema>;

const KEPT = 'halftime.bench';
const UNDO_STEPS = 100;

export const FRESH_SHEET: Sheet = {
  script: readyRuns[0].script,
  settings: DEFAULT_BENCH,
  units: [benchUnitSchema.parse({ id: 'unit-1', name: 'Unit 1' })],
  readings: {},
  marks: [],
};

export interface BenchState extends Sheet {
  /** Whether what was kept has been looked for. */
  opened: boolean;
  past: readonly Sheet[];
  /** Takes up what was kept, and hears of other windows until what it returns is called. */
  open: () => () => void;
  change: (change: Partial<Sheet>) => void;
  setSettings: (change: Partial<BenchSettings>) => void;
  setUnit: (id: string, change: Partial<BenchUnit>) => void;
  addUnit: () => void;
  removeUnit: (id: string) => void;
  /** A figure of `undefined` is one not read. */
  setReading: (
    unit: string,
    checkpoint: string,
    change: { [Figure in keyof Reading]: Reading[Figure] | undefined },
  ) => void;
  undo: () => void;
}

export function createBenchStore() {
  return create<BenchState>()((set, get) => {
    const sheetOf = ({ script, settings, units, readings, marks }: Sheet): Sheet => ({
      script,
      settings,
      units,
      readings,
      marks,
    });
    /** Whether the sheet on show, unlike the one before it, is another window's. */
    let fromOther = false;
    const kept = keptRecord<Sheet>({
      name: KEPT,
      read: (stored) => z.object({ version: z.literal(1), sheet: sheetSchema }).safeParse(stored).data?.sheet,
      write: (sheet) => ({ version: 1, sheet }),
      words: {
        unread: 'What was kept of your last sheet can’t be read here, so a fresh one is shown.',
        full: 'There is no room left in this browser to keep this sheet: it lasts until the page is closed. Print it or export it as CSV to keep it; then delete dives on the desk that you no longer need.',
        blocked:
          'This browser does not let the page keep anything, so this sheet lasts until the page is closed. Print it or export it as CSV to keep it.',
        fileName: 'halftime-bench-unread.json',
      },
      onOther(sheet) {
        // One undo takes back all that the other window did in a row.
        const past = fromOther ? get().past : [...get().past, sheetOf(get())].slice(-UNDO_STEPS);
        set({ ...sheet, past });
        if (!fromOther)
          useStatus.getState().say('The sheet was changed in another window, and is shown here as it is there.', {
            label: 'Undo',
            run: get().undo,
          });
        fromOther = true;
      },
    });
    const show = (sheet: Sheet, past: readonly Sheet[]) => {
      const others = kept.isOthers() ? kept.now() : undefined;
      const clashes = others && JSON.stringify(others) !== JSON.stringify(sheetOf(get()));
      fromOther = false;
      set({ ...sheet, past: clashes ? [...past, others] : past });
      kept.keep(sheet);
      if (clashes)
        useStatus.getState().say('The sheet was changed in another window at the same time. This window’s is kept.', {
          label: 'Take the other',
          run: () => get().change(others),
        });
    };
    const change = (more: Partial<Sheet>) =>
      show({ ...sheetOf(get()), ...more }, [...get().past, sheetOf(get())].slice(-UNDO_STEPS));
    return {
      ...FRESH_SHEET,
      opened: false,
      past: [],
      open() {
        set({ ...(kept.now() ?? {}), opened: true });
        return kept.listen();
      },
      change,
      setSettings: (more) => change({ settings: { ...get().settings, ...more } }),
      setUnit: (id, more) =>
        change({ units: get().units.map((unit) => (unit.id === id ? { ...unit, ...more } : unit)) }),
      addUnit() {
        const { units } = get();
        if (units.length === MOST_UNITS) return;
        const next = 1 + Math.max(0, ...units.map(({ id }) => Number(/\d+$/.exec(id)?.[0] ?? 0)));
        const { water = 'salt', mode = 'dive' } = units.at(-1) ?? {};
        change({ units: [...units, { id: `unit-${next}`, name: `Unit ${next}`, water, mode }] });
      },
      removeUnit: (id) => change({ units: get().units.filter((unit) => unit.id !== id) }),
      setReading(unit, checkpoint, more) {
        const own = get().readings[unit] ?? {};
        const reading = Object.fromEntries(
          Object.entries({ ...own[checkpoint], ...more }).filter(([, figure]) => figure !== undefined),
        );
        change({ readings: { ...get().readings, [unit]: { ...own, [checkpoint]: reading } } });
      },
      undo() {
        const last = get().past.at(-1);
        if (last) show(last, get().past.slice(0, -1));
      },
    };
  });
}

export type BenchStore = ReturnType<typeof createBenchStore>;
