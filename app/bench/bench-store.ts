import * as z from 'zod';
import { create } from 'zustand';
import { MOST_UNITS, type BenchSettings, type BenchUnit, type Reading } from '@/lib/bench/bench-settings';
import { changed, NO_HISTORY, redone, undone, type History } from '../keep/history';
import { keptRecord, type RecordKind } from '../keep/kept-record';
import { useStatus } from '../parts/status';
import { FRESH_SHEET, sheetSchema, type Sheet } from './sheet';
import { clockStandingSchema, steadyClock, type ClockStanding, type SteadyClock } from './steady-clock';

/** A sheet and where the clock of its live run stands: the one is undone, the other is not. */
interface KeptSheet {
  readonly sheet: Sheet;
  readonly clock?: ClockStanding | undefined;
}

const sheetKind: RecordKind<KeptSheet> = {
  name: 'halftime.bench',
  version: 1,
  schema: z.object({
    version: z.literal(1),
    sheet: sheetSchema,
    clock: clockStandingSchema.optional().catch(undefined),
  }),
  write: (kept) => ({ version: 1, ...kept }),
  words: {
    unread: 'What was kept of your last sheet can’t be read here, so a fresh one is shown.',
    refused: {
      full: 'There is no room left in this browser to keep this sheet: it lasts until the page is closed. Print it or export it as CSV to keep it; then delete dives on the desk that you no longer need.',
      blocked:
        'This browser does not let the page keep anything, so this sheet lasts until the page is closed. Print it or export it as CSV to keep it.',
    },
    fileName: 'halftime-bench-unread.json',
  },
};

export interface BenchState extends Sheet, History<Sheet> {
  /** Whether what was kept has been looked for. */
  opened: boolean;
  /** The clock of a live run; where it stands is kept with the sheet. */
  readonly clock: SteadyClock;
  /** Keeps where it stands, unless another window has kept a sheet that has not been seen here. */
  keepClock: () => void;
  /** Takes up what was kept, and hears of other windows until what it returns is called. */
  open: () => () => void;
  /** Changes in a row with the same `joined` name, such as those of typing, are undone together. */
  change: (change: Partial<Sheet>, joined?: string) => void;
  /** Ends a row of joined changes. */
  settle: () => void;
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
  /** The sheet on show, without its history. */
  sheetNow: () => Sheet;
  undo: () => void;
  redo: () => void;
}

export function createBenchStore(wallS?: () => number) {
  return create<BenchState>()((set, get) => {
    const sheetOf = ({ script, settings, about, units, readings, marks }: Sheet): Sheet => ({
      script,
      settings,
      about,
      units,
      readings,
      marks,
    });
    const { say } = useStatus.getState();
    const clock = steadyClock(wallS);
    /** Whether the sheet on show, unlike the one before it, is another window's. */
    let fromOther = false;
    const isShown = (sheet: Sheet) => JSON.stringify(sheet) === JSON.stringify(sheetOf(get()));
    const kept = keptRecord(sheetKind, ({ sheet, clock: theirs }) => {
      if (theirs && theirs.aheadS !== clock.putBackS()) clock.goOn(theirs);
      if (isShown(sheet)) return;
      // One undo takes back all that the other window did in a row.
      set({ ...sheet, ...(!fromOther && changed(get(), sheetOf(get()))) });
      if (!fromOther)
        say('The sheet was changed in another window, and is shown here as it is there.', {
          label: 'Undo',
          run: get().undo,
        });
      fromOther = true;
    });
    const keep = () => kept.keep({ sheet: sheetOf(get()), clock: clock.standing() });
    const show = (sheet: Sheet, history: History<Sheet>) => {
      const others = kept.isOthers() ? kept.now()?.sheet : undefined;
      const clashes = others && !isShown(others);
      fromOther = false;
      set({ ...sheet, ...history, ...(clashes && { past: [...history.past, others] }) });
      keep();
      if (clashes)
        say('The sheet was changed in another window at the same time. This window’s is kept.', {
          label: 'Take the other',
          run: () => get().change(others),
        });
    };
    const change = (more: Partial<Sheet>, joined?: string) =>
      show({ ...sheetOf(get()), ...more }, changed(get(), sheetOf(get()), joined));
    const step = (move: typeof undone) => () => {
      const to = move<Sheet>(get(), sheetOf(get()));
      if (to) show(to.moment, to.history);
    };
    return {
      ...FRESH_SHEET,
      ...NO_HISTORY,
      opened: false,
      clock,
      open() {
        const found = kept.now();
        clock.goOn(found?.clock);
        set({ ...found?.sheet, opened: true });
        return kept.listen();
      },
      keepClock() {
        if (!kept.isOthers()) keep();
      },
      change,
      settle: () => set({ joined: undefined }),
      setSettings: (more) => change({ settings: { ...get().settings, ...more } }),
      setUnit: (id, more) =>
        change({ units: get().units.map((unit) => (unit.id === id ? { ...unit, ...more } : unit)) }),
      addUnit() {
        const { units } = get();
        if (units.length === MOST_UNITS) return;
        const next = 1 + Math.max(0, ...units.map(({ id }) => Number(/\d+$/.exec(id)?.[0] ?? 0)));
        const { water = 'salt', mode = 'dive' } = units.at(-1) ?? {};
        change({ units: [...units, { id: `unit-${next}`, name: `Unit ${next}`, water, mode }] });
        say(`Unit ${next} is added.`);
      },
      removeUnit(id) {
        const { name } = get().units.find((unit) => unit.id === id)!;
        change({ units: get().units.filter((unit) => unit.id !== id) });
        say(`${name} is taken out.`, { label: 'Undo', run: get().undo });
      },
      setReading(unit, checkpoint, more) {
        const own = get().readings[unit] ?? {};
        const reading = Object.fromEntries(
          Object.entries({ ...own[checkpoint], ...more }).filter(([, figure]) => figure !== undefined),
        );
        change({ readings: { ...get().readings, [unit]: { ...own, [checkpoint]: reading } } });
      },
      sheetNow: () => sheetOf(get()),
      undo: step(undone),
      redo: step(redone),
    };
  });
}

export type BenchStore = ReturnType<typeof createBenchStore>;
