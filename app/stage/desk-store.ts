import { create } from 'zustand';
import type { Dive } from '@/lib/dive/dive';
import type { Notice } from '@/lib/dive/script';
import { sampleAt } from '@/lib/dive/timeline';
import { cutRun, FRESH_RUN, runEndS, stepsAsSteered, type SteerRun } from '@/lib/steer/run';
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
  /** A dive that was being steered by hand there, as far as it had gone. */
  readonly run?: SteerRun | undefined;
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
  /** The compartment (1–16) looked at in every picture that looks at one; whichever leads when undefined. */
  compartment: number | undefined;
  chooseCompartment: (compartment: number | undefined) => void;
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
  /** The script's own dive while another stands in its place, such as one steered by hand; else undefined. */
  base: Dive | undefined;
  /** Shows a dive that is not the script's; the script stays as it is. */
  showLive: (dive: Dive) => void;
  /** The dive steered by hand, as far as it has gone; undefined while none is. */
  run: SteerRun | undefined;
  /** What was cut off it to steer on from an earlier moment, until more is cut off or the run ends. */
  cutOff: SteerRun | undefined;
  /** Begins a dive by hand in place of the script's, or goes on with one. */
  startRun: (run?: SteerRun) => void;
  /** Shows how far it has gone. */
  steer: (run: SteerRun) => void;
  /** Lets go of what comes after the time cursor, so that it is steered on from there. */
  cutRunHere: () => void;
  /** Takes up again what was cut off last. */
  putBackRun: () => void;
  /** Ends the run with a script in place of the desk's; without one, as if nobody had steered. */
  endRun: (script?: string) => void;
  setCursor: (timeS: number) => void;
  /** The cursor stands where a ready dive shows what it is for, and nobody has moved it: playing begins at the start. */
  atStill: boolean;
  showStill: (timeS: number) => void;
  setView: (view: DeskState['view']) => void;
  select: (step: number | undefined) => void;
  /** Whether the time cursor moves by itself, and how fast. */
  playing: boolean;
  speed: PlaybackSpeed;
  /** Where playing waits since something happened there, s; until it goes on or another moment is looked at. */
  heldAtS: number | undefined;
  /** Plays; from the start where the end was reached, or nobody has moved the cursor of a ready dive. */
  play: () => void;
  pause: () => void;
  /** Has playing wait where it is told, until the function returned is called. */
  waitAt: (place: WaitingPlace) => () => void;
  waitingPlaces: readonly WaitingPlace[];
  setSpeed: (speed: PlaybackSpeed) => void;
  /** Puts another desk here, as one change that can be undone; `fresh` forgets what stood here before. */
  open: (desk: OpenedDesk, fresh?: 'fresh') => void;
  undo: () => void;
  redo: () => void;
}

/** Where playing is to wait, s, after one time and up to another; undefined where it goes on. */
type WaitingPlace = (afterS: number, toS: number) => number | undefined;

/**
 * A desk with a script on it that is known to make sense; `still` where its dive is to be looked at and not changed. It
 * opens at `stillS`, where its dive shows what it is for, drawn so from the first.
 */
export function createDeskStore(document: DeskDocument, still = false, stillS?: number) {
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
      const run = 'run' in change ? change.run : before.run;
      if (run) {
        // The settings are other than they were; what was steered stays as it is.
        retired = undefined;
        const base = staged.scene.dive;
        const scene = sceneOf(diveOfRun(base, run), rules);
        set({ ...change, scene, base, errors: [], warnings: staged.warnings, cursorS: before.cursorS });
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
      const { run, cursorS } = get();
      if (to) show({ ...to.moment, ...to.history, atStill: false, ...(run && { cursorS }) });
    };

    /** Where the cursor stood before a dive was steered. */
    let cursorBeforeS = 0;

    return {
      ...document,
      still,
      scene: first.scene,
      errors: [],
      warnings: first.warnings,
      cursorS: stillS ?? 0,
      view: undefined,
      selectedStep: undefined,
      unit: 0,
      chooseUnit: (unit) => set({ unit }),
      compartment: undefined,
      chooseCompartment: (compartment) => set({ compartment }),
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
      run: undefined,
      cutOff: undefined,
      startRun(run = FRESH_RUN) {
        cursorBeforeS = get().cursorS;
        set({ run, cutOff: undefined, playing: false, shownWays: [] });
        get().steer(run);
      },
      steer(run) {
        const { scene: before, base = before.dive, rules } = get();
        const scene = sceneOf(diveOfRun(base, run), rules, retired);
        retired = before;
        set({ run, scene, base, cursorS: runEndS(run), view: viewOfRun(run), selectedStep: undefined });
      },
      cutRunHere() {
        const { run, cursorS, steer } = get();
        const cut = run && cutRun(run, cursorS);
        if (!cut || runEndS(run) - runEndS(cut) < 1) return;
        set({ cutOff: run });
        steer(cut);
      },
      putBackRun() {
        const { cutOff, steer } = get();
        if (!cutOff) return;
        set({ cutOff: undefined });
        steer(cutOff);
      },
      endRun(script) {
        const ended = { run: undefined, cutOff: undefined, view: undefined };
        if (script !== undefined) {
          show({ script, ...ended, ...changed(get(), { ...moment(), cursorS: cursorBeforeS }) });
          set({ view: undefined });
          return;
        }
        const { base, scene: live, rules } = get();
        if (!base) return;
        const scene = sceneOf(base, rules, retired);
        retired = live;
        set({ ...ended, scene, base: undefined, cursorS: cursorBeforeS });
      },
      setCursor: (timeS) =>
        set(({ scene, playing, cursorS, waitingPlaces }) => {
          const toS = Math.min(Math.max(0, timeS), scene.timeline.timeS.at(-1)!);
          // At once, so that whoever looks on never sees what comes after it.
          const held = playing ? waitingPlaces.map((place) => place(cursorS, toS) ?? Infinity) : [];
          const nextS = Math.min(...held);
          return nextS <= toS
            ? { cursorS: nextS, heldAtS: nextS, playing: false, atStill: false }
            : { cursorS: toS, heldAtS: undefined, atStill: false };
        }),
      atStill: stillS !== undefined,
      showStill(timeS) {
        get().setCursor(timeS);
        set({ atStill: true });
      },
      setView: (view) => set({ view }),
      select: (selectedStep) => set({ selectedStep }),
      playing: false,
      heldAtS: undefined,
      speed: '60',
      play: () =>
        set(({ scene, cursorS, atStill }) => ({
          playing: true,
          heldAtS: undefined,
          atStill: false,
          ...((atStill || cursorS >= scene.timeline.timeS.at(-1)!) && { cursorS: 0 }),
        })),
      pause: () => set({ playing: false }),
      waitingPlaces: [],
      waitAt(place) {
        set(({ waitingPlaces }) => ({ waitingPlaces: [...waitingPlaces, place] }));
        return () => set(({ waitingPlaces }) => ({ waitingPlaces: waitingPlaces.filter((other) => other !== place) }));
      },
      setSpeed: (speed) => set({ speed }),
      open({ cursorS, view, unit = 0, soundScript, run, ...document }, fresh) {
        if (get().run) get().endRun();
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
          atStill: false,
        });
        const endS = get().scene.timeline.timeS.at(-1)!;
        set({
          cursorS: Math.min(Math.max(0, cursorS), endS),
          view: view && view.startS < endS ? { startS: view.startS, endS: Math.min(view.endS, endS) } : undefined,
        });
        if (run) get().startRun(run);
      },
      undo: step(undone),
      redo: step(redone),
    };
  });
}

function diveOfRun({ settings }: Dive, run: SteerRun): Dive {
  return { settings, steps: stepsAsSteered(run), lines: [] };
}

/** Lengths of a time axis for a dive that is still going on, s: it grows in steps, so that what is drawn doesn't slide all the time. */
const AXIS_EVERY_S = 600;
/** Room kept after where the dive has come to, for the way up that is planned from there, s. */
const AHEAD_S = 180;

function viewOfRun(run: SteerRun): NonNullable<DeskState['view']> {
  return { startS: 0, endS: (Math.floor((runEndS(run) + AHEAD_S) / AXIS_EVERY_S) + 1) * AXIS_EVERY_S };
}

export type DeskStore = ReturnType<typeof createDeskStore>;

/** The sample the cursor stands on. */
export function cursorSample({ scene, cursorS }: Pick<DeskState, 'scene' | 'cursorS'>): number {
  return sampleAt(scene.timeline, cursorS);
}
