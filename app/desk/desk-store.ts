import { create } from 'zustand';
import type { Notice } from '@/lib/dive/script';
import { sampleAt } from '@/lib/dive/timeline';
import { stage, type Scene } from './scene';

/** How the next change joins the last one when it is undone: its own step, or one with what came just before. */
export type UndoStep = 'own' | 'joined';

interface Moment {
  readonly script: string;
  readonly cursorS: number;
}

export interface DeskState {
  script: string;
  /** The last dive the script made sense as; it stays on screen while the script has errors. */
  scene: Scene;
  errors: readonly Notice[];
  warnings: readonly Notice[];
  /** One moment in time, the same in every picture. */
  cursorS: number;
  past: readonly Moment[];
  future: readonly Moment[];
  setScript: (script: string, undo?: UndoStep) => void;
  setCursor: (timeS: number) => void;
  undo: () => void;
  redo: () => void;
}

const UNDO_STEPS = 200;

/** A desk with a script on it that is known to make sense. */
export function createDeskStore(script: string) {
  const first = stage(script);
  if (!first.ok) throw new Error(`the desk cannot open with a script that does not parse: ${first.errors[0]?.message}`);
  /** The scene before the one on screen: out of sight, so its memory is used for the next. */
  let retired: Scene | undefined;
  let joining = false;

  return create<DeskState>()((set, get) => {
    function show(next: string, moment: Partial<DeskState>) {
      const staged = stage(next, retired);
      if (!staged.ok) {
        set({ ...moment, script: next, errors: staged.errors });
        return;
      }
      retired = get().scene;
      const endS = staged.scene.timeline.timeS.at(-1)!;
      const cursorS = Math.min(moment.cursorS ?? get().cursorS, endS);
      set({ ...moment, script: next, scene: staged.scene, errors: [], warnings: staged.warnings, cursorS });
    }

    return {
      script,
      scene: first.scene,
      errors: [],
      warnings: first.warnings,
      cursorS: 0,
      past: [],
      future: [],
      setScript(next, undo = 'own') {
        const { script: before, cursorS, past } = get();
        if (next === before) return;
        const joins = undo === 'joined' && joining;
        joining = undo === 'joined';
        show(next, { future: [], ...(!joins && { past: [...past, { script: before, cursorS }].slice(-UNDO_STEPS) }) });
      },
      setCursor: (timeS) => set(({ scene }) => ({ cursorS: Math.min(Math.max(0, timeS), scene.timeline.timeS.at(-1)!) })),
      undo() {
        const { past, future, script: now, cursorS } = get();
        const last = past.at(-1);
        if (!last) return;
        joining = false;
        show(last.script, { past: past.slice(0, -1), future: [{ script: now, cursorS }, ...future], cursorS: last.cursorS });
      },
      redo() {
        const { past, future, script: now, cursorS } = get();
        const next = future[0];
        if (!next) return;
        joining = false;
        show(next.script, { past: [...past, { script: now, cursorS }], future: future.slice(1), cursorS: next.cursorS });
      },
    };
  });
}

export type DeskStore = ReturnType<typeof createDeskStore>;

/** The sample the cursor stands on. */
export function cursorSample({ scene, cursorS }: Pick<DeskState, 'scene' | 'cursorS'>): number {
  return sampleAt(scene.timeline, cursorS);
}
