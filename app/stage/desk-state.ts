import type { Dive } from '@/lib/dive/dive';
import type { Notice } from '@/lib/dive/script';
import type { SteerRun } from '@/lib/steer/run';
import type { History } from '../keep/history';
import type { RuleSettings } from '@/lib/rules/all';
import type { WayOut } from '@/lib/ways-out/ways-out';
import type { PictureId } from '../pictures/picture-ids';
import type { PanelId } from './panel-ids';
import type { ReadingId } from './reading-ids';
import type { Scene } from '../pictures/scene';

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

export interface PastDesk extends DeskDocument {
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
