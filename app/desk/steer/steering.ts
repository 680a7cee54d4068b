import { create } from 'zustand';
import { KEPT_EVERY_M } from '@/lib/steer/kept-run';
import { LONGEST_STEERED_S, runEndS, steered } from '@/lib/steer/run';
import { usePreferences } from '../../parts/preferences';
import { useStatus } from '../../parts/status';
import { useDeskStore } from '../../stage/desk-context';
import type { DeskStore } from '../../stage/desk-store';
import { leverPlace, leverRateMMin, nextNotch } from './lever';

export const STEERING_SPEEDS = ['1', '5', '10', '20', '60'] as const;
type SteeringSpeed = (typeof STEERING_SPEEDS)[number];

/** The lever grows this much a second while a key is held, and lies at full after two. */
const KEY_GROWTH_PER_S = 0.5;
/** A frame is at most this long, so that a hidden window doesn't come back to a dive minutes later. */
const LONGEST_FRAME_S = 0.25;
/** A press shorter than this is a tap, which sets a speed that stays; a longer one holds the lever while it lasts. */
const TAP_MS = 250;

/** The hand on the lever, and whether time goes on. */
export interface Steering {
  /** Where the lever stands, as a speed: m/min, downward positive. */
  readonly rateMMin: number;
  /** Time goes on. */
  readonly running: boolean;
  /** Seconds of the dive to a second of the clock. */
  readonly speed: SteeringSpeed;
  setSpeed: (speed: SteeringSpeed) => void;
  /** Time goes on from where the time cursor stands. */
  goOn: () => void;
  wait: () => void;
  /** A speed that stays until another is set, and time goes on. */
  set: (rateMMin: number) => void;
  /** The next speed upward or downward, which stays. */
  notch: (way: -1 | 1) => void;
  /** The lever at a place from −1, up, to 1, down, for as long as it is held. */
  pull: (place: number) => void;
  letGo: () => void;
  /** A key takes hold of the lever, and lets go: tapped, it sets the next speed. */
  keyDown: (way: -1 | 1, nowMs: number) => void;
  keyUp: (nowMs: number) => void;
  /** Whether a press begun then is a tap. */
  isTap: (sinceMs: number, nowMs: number) => boolean;
  /** Moves the dive on by some seconds of the clock. */
  tick: (seconds: number) => void;
}

function createSteering(desk: DeskStore) {
  let key: { readonly way: -1 | 1; readonly sinceMs: number; readonly beforeMMin: number } | undefined;
  return create<Steering>()((set, get) => {
    const system = () => usePreferences.getState().units;
    return {
      rateMMin: 0,
      running: false,
      speed: '10',
      setSpeed: (speed) => set({ speed }),
      goOn() {
        if (get().running || !desk.getState().run) return;
        desk.getState().cutRunHere();
        set({ running: true });
      },
      wait: () => set({ running: false }),
      set(rateMMin) {
        set({ rateMMin });
        get().goOn();
      },
      notch: (way) => get().set(nextNotch(get().rateMMin, way, system())),
      pull: (place) => get().set(leverRateMMin(place)),
      letGo() {
        key = undefined;
        set({ rateMMin: 0 });
      },
      keyDown(way, nowMs) {
        if (key?.way === way) return;
        key = { way, sinceMs: nowMs, beforeMMin: get().rateMMin };
        get().goOn();
      },
      keyUp(nowMs) {
        if (!key) return;
        const { way, sinceMs, beforeMMin } = key;
        get().letGo();
        if (get().isTap(sinceMs, nowMs)) get().set(nextNotch(beforeMMin, way, system()));
      },
      isTap: (sinceMs, nowMs) => nowMs - sinceMs < TAP_MS,
      tick(clockS) {
        const seconds = Math.min(clockS, LONGEST_FRAME_S);
        const { run, steer } = desk.getState();
        if (!run || seconds <= 0) return;
        if (key) {
          const place = leverPlace(get().rateMMin) * key.way > 0 ? leverPlace(get().rateMMin) : 0;
          const grown = place + key.way * KEY_GROWTH_PER_S * seconds;
          // From nothing it begins where it is felt.
          const felt = Math.abs(grown) < 0.1 ? key.way * 0.1 : grown;
          set({ rateMMin: leverRateMMin(Math.min(Math.max(felt, -1), 1)) });
        }
        const next = steered(run, get().rateMMin, seconds * Number(get().speed), KEPT_EVERY_M[system()]);
        steer(next);
        if (runEndS(next) < LONGEST_STEERED_S) return;
        get().wait();
        useStatus.getState().say('That is as long as a dive can be steered. Keep it, or go back to an earlier moment.');
      },
    };
  });
}

const steerings = new WeakMap<DeskStore, ReturnType<typeof createSteering>>();

/** The hand on the lever of a desk: one, wherever the lever and its bar stand. */
export function steeringOf(desk: DeskStore): ReturnType<typeof createSteering> {
  const known = steerings.get(desk) ?? createSteering(desk);
  steerings.set(desk, known);
  return known;
}

export function useSteering<Part>(select: (steering: Steering) => Part): Part {
  return steeringOf(useDeskStore())(select);
}
