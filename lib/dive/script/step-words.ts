import type { Step } from '../dive';

/** One kind of step of a script: the words it begins with, and help for the reference page. */
export interface StepWords {
  readonly kind: Step['kind'];
  /** The first is the one written; the others are understood. */
  readonly words: readonly string[];
  readonly help: string;
  readonly examples: readonly string[];
}

/**
 * Ways to begin a change of depth, down and up, in pairs: an edit that turns one into the other keeps to the
 * writer's manner.
 */
export const VERTICAL_WORDS = [
  ['descend', 'ascend'],
  ['go down', 'go up'],
  ['down', 'up'],
  ['swim down', 'swim up'],
  ['drop', 'rise'],
  ['sink', 'float up'],
  ['go back down', 'come up'],
] as const;

/** A step that needs no depth: `surface at 9 m/min`. */
export const SURFACE = 'surface';

export const STEPS: readonly StepWords[] = [
  {
    kind: 'descend',
    words: VERTICAL_WORDS.map(([down]) => down),
    help: 'Goes down to a depth, at a rate or in a time; with neither, at the plan’s rate of descent.',
    examples: ['descend to 30 m', 'descend to 30 m at 18 m/min', 'descend to 100 ft in 2 min'],
  },
  {
    kind: 'ascend',
    words: [...VERTICAL_WORDS.map(([, up]) => up), SURFACE],
    help: 'Comes up to a depth or to the surface, at a rate or in a time; with neither, at the plan’s rate of ascent.',
    examples: ['ascend to 5 m', 'ascend to surface at 9 m/min', 'ascend to surface in 1 min', 'surface at 30 ft/min'],
  },
  {
    kind: 'stay',
    words: ['stay', 'hold', 'wait', 'remain', 'stop'],
    help: 'Stays at the depth reached.',
    examples: ['stay 20 min', 'stay 2 min 30 s', 'stay 3:00'],
  },
  {
    kind: 'switch',
    words: ['switch to', 'switch', 'switch gas to', 'change to', 'change gas to', 'breathe'],
    help: 'Breathes another gas from here on.',
    examples: ['switch to 50%', 'switch to oxygen', 'switch to 18/45'],
  },
  {
    kind: 'interval',
    words: ['interval', 'surface interval'],
    help: 'Waits at the surface breathing air; the next dive begins on the gas of the settings.',
    examples: ['interval 60 min', 'interval 2 h 30 min'],
  },
];
