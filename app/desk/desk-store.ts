import { create } from 'zustand';
import type { Dive } from '@/lib/dive/dive';
import type { Notice } from '@/lib/dive/script';
import { sampleAt } from '@/lib/dive/timeline';
import type { PictureId } from './pictures/all';
import type { ReadingId } from './reading-ids';
import { sceneOf, stage, type Scene } from './scene';

/** What a person makes on the desk: kept, undone, shared. */
export interface DeskDocument {
  readonly script: string;
  /** The pictures on show, in order. */
  readonly pictures: readonly PictureId[];
  /** Readings hidden until the class has guessed. */
  readonly covered: readonly ReadingId[];
}

interface Moment extends DeskDocument {
  readonly cursorS: number;
}

export interface DeskState extends DeskDocument {
  /** The last dive the script made sense as; it stays on screen while the script has errors. */
  scene: Scene;
  errors: readonly Notice[];
  warnings: readonly Notice[];
  /** One moment in time, the same in every picture. */
  cursorS: number;
  /** The stretch of time the pictures show; the whole day when undefined. */
  view: { readonly startS: number; readonly endS: number } | undefined;
  /** The step under the hand, by its index in the dive. */
  selectedStep: number | undefined;
  past: readonly Moment[];
  future: readonly Moment[];
  /**
   * Changes the document; every change can be undone. Changes in a row with the same `joined` name, such as those of
   * one drag, are undone together.
   */
  change: (change: Partial<DeskDocument>, joined?: string) => void;
  /** The dive that stood here before one is steered by hand; undefined while none is. */
  base: Dive | undefined;
  /** Shows a dive that is still going on; the script stays as it is until the run ends. */
  showLive: (dive: Dive) => void;
  /** Goes back to the script's own dive. */
  dropLive: () => void;
  setCursor: (timeS: number) => void;
  setView: (view: DeskState['view']) => void;
  select: (step: number | undefined) => void;
  undo: () => void;
  redo: () => void;
}

const UNDO_STEPS = 200;

/** A desk with a script on it that is known to make sense. */
export function createDeskStore(document: DeskDocument) {
  const first = stage(document.script);
  if (!first.ok) throw new Error(`the desk cannot open with a script that does not parse: ${first.errors[0]?.message}`);
  /** The scene before the one on screen: out of sight, so its memory is used for the next. */
  let retired: Scene | undefined;
  let joining: string | undefined;

  return create<DeskState>()((set, get) => {
    function show(change: Partial<DeskState>) {
      const before = get();
      if (change.script === undefined || change.script === before.script) {
        set(change);
        return;
      }
      const staged = stage(change.script, retired);
      if (!staged.ok) {
        set({ ...change, errors: staged.errors });
        return;
      }
      retired = before.scene;
      const endS = staged.scene.timeline.timeS.at(-1)!;
      const cursorS = Math.min(change.cursorS ?? before.cursorS, endS);
      const view = before.view && before.view.startS < endS ? { ...before.view, endS: Math.min(before.view.endS, endS) } : undefined;
      set({ ...change, scene: staged.scene, errors: [], warnings: staged.warnings, cursorS, view, base: undefined });
    }
    const moment = (): Moment => {
      const { script, pictures, covered, cursorS } = get();
      return { script, pictures, covered, cursorS };
    };

    return {
      ...document,
      scene: first.scene,
      errors: [],
      warnings: first.warnings,
      cursorS: 0,
      view: undefined,
      selectedStep: undefined,
      past: [],
      future: [],
      change(change, joined) {
        const before = moment();
        if (Object.entries(change).every(([name, value]) => before[name as keyof DeskDocument] === value)) return;
        const joins = joined !== undefined && joined === joining;
        joining = joined;
        show({ ...change, future: [], ...(!joins && { past: [...get().past, before].slice(-UNDO_STEPS) }) });
      },
      base: undefined,
      showLive(dive) {
        if (dive.steps.length === 0) return;
        const { scene: before, base } = get();
        const scene = sceneOf(dive, retired);
        retired = before;
        set({ scene, base: base ?? before.dive, cursorS: scene.timeline.timeS.at(-1)!, view: undefined, selectedStep: undefined });
      },
      dropLive() {
        const { base, scene: live } = get();
        if (!base) return;
        const scene = sceneOf(base, retired);
        retired = live;
        set({ scene, base: undefined, cursorS: 0 });
      },
      setCursor: (timeS) => set(({ scene }) => ({ cursorS: Math.min(Math.max(0, timeS), scene.timeline.timeS.at(-1)!) })),
      setView: (view) => set({ view }),
      select: (selectedStep) => set({ selectedStep }),
      undo() {
        const { past, future } = get();
        const last = past.at(-1);
        if (!last) return;
        joining = undefined;
        show({ ...last, past: past.slice(0, -1), future: [moment(), ...future] });
      },
      redo() {
        const { past, future } = get();
        const next = future[0];
        if (!next) return;
        joining = undefined;
        show({ ...next, past: [...past, moment()], future: future.slice(1) });
      },
    };
  });
}

export type DeskStore = ReturnType<typeof createDeskStore>;

/** The sample the cursor stands on. */
export function cursorSample({ scene, cursorS }: Pick<DeskState, 'scene' | 'cursorS'>): number {
  return sampleAt(scene.timeline, cursorS);
}
