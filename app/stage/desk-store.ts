import { create } from 'zustand';
import type { Dive } from '@/lib/dive/dive';
import { sampleAt } from '@/lib/dive/timeline';
import { cutRun, FRESH_RUN, runEndS, stepsAsSteered, type SteerRun } from '@/lib/steer/run';
import { changed, NO_HISTORY, redone, undone } from '../keep/history';
import { sceneOf, stage, type Scene } from '../pictures/scene';
import type { DeskDocument, PastDesk, DeskState } from './desk-state';

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
