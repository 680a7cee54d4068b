import { create } from 'zustand';
import type { Dive } from '@/lib/dive/dive';
import type { Notice } from '@/lib/dive/script';
import { sampleAt } from '@/lib/dive/timeline';
import { changed, NO_HISTORY, redone, undone, type History } from '../keep/history';
import type { RuleSettings } from '@/lib/rules/all';
import type { WayOut } from '@/lib/ways-out/ways-out';
import type { PictureId } from '../pictures/picture-ids';
import type { PanelId } from './panel-ids';
import type { ReadingId } from './reading-ids';
import { sceneOf, stage, type Scene } from '../pictures/scene';

/** What a person makes on the desk: kept, undone, shared. */
export interface DeskDocument {
  readonly script: string;
  /** The pictures on show, in order. */
  readonly pictures: readonly PictureId[];
  /** Readings hidden until the class has guessed. */
  readonly covered: readonly ReadingId[];
  /** What instruments add to the model; when undefined, the rules as they usually are. */
  readonly rules?: RuleSettings | undefined;
  /** A second dive laid over the first, to compare the two. */
  readonly overlay?: { readonly title: string; readonly script: string } | undefined;
  /** What a class is shown in the presenter's view; when undefined, the pictures and the readings. */
  readonly presented?: readonly PanelId[] | undefined;
}

interface PastDesk extends DeskDocument {
  readonly cursorS: number;
}

/** A whole desk, as it was kept or sent. */
export interface OpenedDesk extends DeskDocument {
  readonly cursorS: number;
  readonly view: DeskState['view'];
  readonly unit?: number | undefined;
  /** Where the script makes no sense yet, the last one that did: the pictures show it. */
  readonly soundScript?: string | undefined;
}

export const PLAYBACK_SPEEDS = ['1', '10', '30', '60', '120'] as const;
/** Seconds of the dive to a second of the clock. */
type PlaybackSpeed = (typeof PLAYBACK_SPEEDS)[number];

export interface DeskState extends DeskDocument, History<PastDesk> {
  /** The last dive the script made sense as; it stays on screen while the script has errors. */
  scene: Scene;
  errors: readonly Notice[];
  warnings: readonly Notice[];
  /** The dive is to be looked at: pictures offer no hold on it. */
  readonly still: boolean;
  /** One moment in time, the same in every picture. */
  cursorS: number;
  /** The stretch of time the pictures show; the whole day when undefined. */
  view: { readonly startS: number; readonly endS: number } | undefined;
  /** The step under the hand, by its index in the dive. */
  selectedStep: number | undefined;
  /** Whose rules and readings are shown: 0 is the unit set right, then the setups in the script's order. */
  unit: number;
  chooseUnit: (unit: number) => void;
  /** Ways out of a stop drawn beside the dive, at most two; shown, and not kept. */
  readonly shownWays: readonly WayOut[];
  showWays: (ways: readonly WayOut[]) => void;
  /**
   * Changes the document; every change can be undone. Changes in a row with the same `joined` name, such as those of
   * one drag, are undone together.
   */
  change: (change: Partial<DeskDocument>, joined?: string) => void;
  /** Ends a row of joined changes: the next is undone by itself. */
  settle: () => void;
  /** The dive that stood here before one is steered by hand; undefined while none is. */
  base: Dive | undefined;
  /** Shows a dive that is still going on; the script stays as it is until the run ends. */
  showLive: (dive: Dive) => void;
  /** Goes back to the script's own dive. */
  dropLive: () => void;
  setCursor: (timeS: number) => void;
  setView: (view: DeskState['view']) => void;
  select: (step: number | undefined) => void;
  /** Whether the time cursor moves by itself, and how fast. */
  playing: boolean;
  speed: PlaybackSpeed;
  /** Plays, from the start again where the end was reached. */
  play: () => void;
  pause: () => void;
  setSpeed: (speed: PlaybackSpeed) => void;
  /** Puts another desk here, as one change that can be undone; `fresh` forgets what stood here before. */
  open: (desk: OpenedDesk, fresh?: 'fresh') => void;
  undo: () => void;
  redo: () => void;
}

/** A desk with a script on it that is known to make sense; `still` where its dive is to be looked at and not changed. */
export function createDeskStore(document: DeskDocument, still = false) {
  const first = stage(document.script, document.rules);
  if (!first.ok) throw new Error(`the desk cannot open with a script that does not parse: ${first.errors[0]?.message}`);
  /** The scene before the one on screen: out of sight, so its memory is used for the next. */
  let retired: Scene | undefined;

  return create<DeskState>()((set, get) => {
    function show(change: Partial<DeskState>) {
      const before = get();
      const { script = before.script } = change;
      const rules = 'rules' in change ? change.rules : before.rules;
      if (script === before.script && rules === before.rules) {
        set(change);
        return;
      }
      const staged = stage(script, rules, retired);
      if (!staged.ok) {
        set({ ...change, errors: staged.errors });
        return;
      }
      retired = before.scene;
      const endS = staged.scene.timeline.timeS.at(-1)!;
      const cursorS = Math.min(change.cursorS ?? before.cursorS, endS);
      const view =
        before.view && before.view.startS < endS
          ? { ...before.view, endS: Math.min(before.view.endS, endS) }
          : undefined;
      set({ ...change, scene: staged.scene, errors: [], warnings: staged.warnings, cursorS, view, base: undefined });
    }
    const moment = (): PastDesk => {
      const { script, pictures, covered, rules, overlay, presented, cursorS } = get();
      return { script, pictures, covered, rules, overlay, presented, cursorS };
    };

    const step = (move: typeof undone) => () => {
      const to = move<PastDesk>(get(), moment());
      if (to) show({ ...to.moment, ...to.history });
    };

    return {
      ...document,
      still,
      scene: first.scene,
      errors: [],
      warnings: first.warnings,
      cursorS: 0,
      view: undefined,
      selectedStep: undefined,
      unit: 0,
      chooseUnit: (unit) => set({ unit }),
      shownWays: [],
      showWays: (shownWays) => set({ shownWays }),
      ...NO_HISTORY,
      change(change, joined) {
        const before = moment();
        if (Object.entries(change).every(([name, value]) => before[name as keyof DeskDocument] === value)) return;
        show({ ...change, ...changed(get(), before, joined) });
      },
      settle: () => set({ joined: undefined }),
      base: undefined,
      showLive(dive) {
        if (dive.steps.length === 0) return;
        const { scene: before, base } = get();
        const scene = sceneOf(dive, get().rules, retired);
        retired = before;
        set({
          scene,
          base: base ?? before.dive,
          cursorS: scene.timeline.timeS.at(-1)!,
          view: undefined,
          selectedStep: undefined,
        });
      },
      dropLive() {
        const { base, scene: live } = get();
        if (!base) return;
        const scene = sceneOf(base, get().rules, retired);
        retired = live;
        set({ scene, base: undefined, cursorS: 0 });
      },
      setCursor: (timeS) =>
        set(({ scene }) => ({ cursorS: Math.min(Math.max(0, timeS), scene.timeline.timeS.at(-1)!) })),
      setView: (view) => set({ view }),
      select: (selectedStep) => set({ selectedStep }),
      playing: false,
      speed: '60',
      play: () =>
        set(({ scene, cursorS }) => ({
          playing: true,
          ...(cursorS >= scene.timeline.timeS.at(-1)! && { cursorS: 0 }),
        })),
      pause: () => set({ playing: false }),
      setSpeed: (speed) => set({ speed }),
      open({ cursorS, view, unit = 0, soundScript, ...document }, fresh) {
        const history = fresh ? NO_HISTORY : changed(get(), moment());
        if (soundScript !== undefined) show({ script: soundScript, rules: document.rules, joined: undefined });
        show({
          presented: undefined,
          rules: undefined,
          overlay: undefined,
          ...document,
          unit,
          ...history,
          selectedStep: undefined,
          playing: false,
        });
        const endS = get().scene.timeline.timeS.at(-1)!;
        set({
          cursorS: Math.min(Math.max(0, cursorS), endS),
          view: view && view.startS < endS ? { startS: view.startS, endS: Math.min(view.endS, endS) } : undefined,
        });
      },
      undo: step(undone),
      redo: step(redone),
    };
  });
}

export type DeskStore = ReturnType<typeof createDeskStore>;

/** The sample the cursor stands on. */
export function cursorSample({ scene, cursorS }: Pick<DeskState, 'scene' | 'cursorS'>): number {
  return sampleAt(scene.timeline, cursorS);
}
