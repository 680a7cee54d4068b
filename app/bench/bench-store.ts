import * as z from 'zod';
import { create } from 'zustand';
import { readyRuns } from '@/content/bench/runs';
import { benchSettingsSchema, benchUnitSchema, DEFAULT_BENCH, MOST_UNITS, readingSchema, type BenchSettings, type BenchUnit, type Reading } from '@/lib/bench/bench-settings';
import { safeStorage } from '../parts/safe-storage';

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
  open: () => void;
  change: (change: Partial<Sheet>) => void;
  setSettings: (change: Partial<BenchSettings>) => void;
  setUnit: (id: string, change: Partial<BenchUnit>) => void;
  addUnit: () => void;
  removeUnit: (id: string) => void;
  /** A figure of `undefined` is one not read. */
  setReading: (unit: string, checkpoint: string, change: { [Figure in keyof Reading]: Reading[Figure] | undefined }) => void;
  undo: () => void;
}

export function createBenchStore() {
  return create<BenchState>()((set, get) => {
    const sheetOf = ({ script, settings, units, readings, marks }: Sheet): Sheet => ({ script, settings, units, readings, marks });
    const show = (sheet: Sheet, past: readonly Sheet[]) => {
      set({ ...sheet, past });
      safeStorage.setItem(KEPT, JSON.stringify({ version: 1, sheet }));
    };
    const change = (more: Partial<Sheet>) => show({ ...sheetOf(get()), ...more }, [...get().past, sheetOf(get())].slice(-UNDO_STEPS));
    return {
      ...FRESH_SHEET,
      opened: false,
      past: [],
      open() {
        const sheet = keptSheet();
        set({ ...(sheet ?? {}), opened: true });
      },
      change,
      setSettings: (more) => change({ settings: { ...get().settings, ...more } }),
      setUnit: (id, more) => change({ units: get().units.map((unit) => (unit.id === id ? { ...unit, ...more } : unit)) }),
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
        const reading = Object.fromEntries(Object.entries({ ...own[checkpoint], ...more }).filter(([, figure]) => figure !== undefined));
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

/** What was kept, if it can be read. */
function keptSheet(): Sheet | undefined {
  try {
    const stored = safeStorage.getItem(KEPT) as string | null;
    if (stored === null) return undefined;
    return z.object({ version: z.literal(1), sheet: sheetSchema }).safeParse(JSON.parse(stored)).data?.sheet;
  } catch {
    return undefined;
  }
}
