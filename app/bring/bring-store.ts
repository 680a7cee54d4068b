import { create } from 'zustand';
import type { Settings } from '@/lib/dive/dive';
import { BLOCKING } from '@/lib/files/records/faults';
import type { FindingKind } from '@/lib/files/records/check-record';
import type { Mapping } from '@/lib/files/csv/csv-mapping';
import type { Preview } from '@/lib/files/csv/preview-rows';
import type { Doubt } from '@/lib/files/settings/explain-settings';
import type { FileBrought, Explained, Look, MakeOutcome, Session, Trouble } from './brought';

export type Busy = { readonly with: 'reading' | 'making' | 'explaining'; readonly part: number | undefined };

export interface BringState {
  readonly fileName: string;
  readonly fileBytes: number;
  readonly look: Extract<Look, { ok: true }> | undefined;
  readonly mapping: Mapping | undefined;
  /** The first rows as the mapping has them read. */
  readonly preview: Preview | undefined;
  readonly brought: FileBrought | undefined;
  readonly chosen: readonly number[];
  readonly repair: readonly FindingKind[];
  readonly intervalsS: readonly (number | undefined)[];
  readonly settings: Partial<Settings>;
  readonly outcome: MakeOutcome | undefined;
  readonly explained: Explained | undefined;
  readonly doubt: Doubt;
  readonly busy: Busy | undefined;
  readonly trouble: Trouble | undefined;
  choose: (file: Blob, name: string) => Promise<void>;
  setMapping: (mapping: Mapping) => void;
  read: () => Promise<void>;
  decide: (change: Partial<Pick<BringState, 'chosen' | 'repair' | 'intervalsS' | 'settings'>>) => Promise<void>;
  setDoubt: (doubt: Doubt) => void;
  explain: () => Promise<void>;
  cancel: () => void;
  write: (kind: 'uddf' | 'csv') => Promise<string>;
}

const NOTHING_READ = {
  brought: undefined,
  chosen: [],
  repair: [],
  intervalsS: [],
  outcome: undefined,
  explained: undefined,
} as const;
const WENT_WRONG: Trouble = {
  what: 'The part of the page that reads files has stopped.',
  mend: 'Reload the page and choose the file again.',
};

/** One file on its way in: what was found, what was decided, and what came of it. */
export function createBringStore(session: Session) {
  return create<BringState>()((set, get) => {
    /** Work begun later makes what is still on its way stale. */
    let turn = 0;
    async function working<Outcome>(
      busy: Busy['with'],
      work: () => Promise<Outcome>,
      done: (outcome: Outcome) => void,
    ): Promise<void> {
      const own = (turn += 1);
      set({ busy: { with: busy, part: busy === 'making' ? undefined : 0 }, trouble: undefined });
      try {
        const outcome = await work();
        if (own !== turn) return;
        set({ busy: undefined });
        done(outcome);
      } catch {
        if (own === turn) set({ busy: undefined, trouble: WENT_WRONG });
      }
    }
    const progress = (part: number) => {
      const { busy } = get();
      if (busy) set({ busy: { ...busy, part: Math.min(1, part) } });
    };
    const preview = async (mapping: Mapping) => {
      const seen = await session.preview(mapping).catch(() => undefined);
      if (get().mapping === mapping) set({ preview: seen });
    };
    const make = () => {
      const { chosen, repair, intervalsS, settings } = get();
      if (chosen.length === 0) {
        set({ outcome: undefined, explained: undefined });
        return Promise.resolve();
      }
      return working(
        'making',
        () => session.make({ chosen, repair, intervalsS, settings }),
        (outcome) => set({ outcome, explained: undefined }),
      );
    };

    return {
      fileName: '',
      fileBytes: 0,
      look: undefined,
      mapping: undefined,
      preview: undefined,
      ...NOTHING_READ,
      settings: {},
      doubt: { water: true, altitude: true, gas: true, memory: true },
      busy: undefined,
      trouble: undefined,
      async choose(file, name) {
        void session.cancel();
        set({
          ...NOTHING_READ,
          settings: {},
          fileName: name,
          fileBytes: file.size,
          look: undefined,
          mapping: undefined,
          preview: undefined,
        });
        await working(
          'reading',
          () => session.look(file),
          (look) => {
            if (!look.ok) set({ trouble: look });
            else if (look.kind === 'uddf') set({ look });
            else {
              set({ look, mapping: look.mapping });
              void preview(look.mapping);
            }
          },
        );
        const { look } = get();
        // What leaves nothing open is read at once.
        if (look && (look.kind === 'uddf' || look.questions.length === 0)) await get().read();
      },
      setMapping(mapping) {
        set({ ...NOTHING_READ, mapping });
        void preview(mapping);
      },
      async read() {
        const { fileBytes, mapping } = get();
        await working(
          'reading',
          () => session.read(mapping, (characters) => progress(characters / Math.max(1, fileBytes))),
          (read) => {
            if (!read.ok) {
              set({ ...NOTHING_READ, trouble: read });
              return;
            }
            set({
              brought: read,
              chosen: read.likely,
              repair: [],
              intervalsS: [],
              outcome: undefined,
              explained: undefined,
            });
          },
        );
        if (get().brought) await make();
      },
      async decide(change) {
        // Which dives there are changes with what is chosen and mended, and intervals go by their places.
        set({ ...('chosen' in change || 'repair' in change ? { intervalsS: [] } : {}), ...change });
        await make();
      },
      setDoubt: (doubt) => set({ doubt }),
      explain: () =>
        working(
          'explaining',
          () => session.explain(get().doubt, ({ done, of }) => progress(done / of)),
          (outcome) => {
            if (outcome.ok) set({ explained: outcome });
            else set({ trouble: outcome });
          },
        ),
      cancel: () => void session.cancel(),
      write: (kind) => session.write(kind),
    };
  });
}

export type BringStore = ReturnType<typeof createBringStore>;

/** Every kind of finding a repair is offered for, with how many samples it concerns, the ones that must be mended first. */
export function mendable(
  { dives }: Pick<FileBrought, 'dives'>,
  chosen: readonly number[],
): { kind: FindingKind; count: number; repair: string; blocking: boolean }[] {
  const kinds = new Map<FindingKind, { kind: FindingKind; count: number; repair: string; blocking: boolean }>();
  for (const place of chosen) {
    const dive = dives[place]!;
    for (const { kind, repair } of dive.findings) {
      if (repair === undefined || kinds.has(kind)) continue;
      kinds.set(kind, {
        kind,
        repair,
        blocking: BLOCKING.has(kind),
        count: chosen.reduce((sum, other) => sum + (dives[other]!.counts[kind] ?? 0), 0),
      });
    }
  }
  return [...kinds.values()].sort((one, other) => Number(other.blocking) - Number(one.blocking));
}
