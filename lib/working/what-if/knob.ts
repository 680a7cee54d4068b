import type { Dive } from '../../dive/dive';
import type { Setup } from '../../dive/setup';
import type { Timeline } from '../../dive/timeline';
import type { RuleSettings } from '../../rules/all';
import type { Watch } from '../../rules/watch';
import type { Compartments } from '../../tissue/coefficients';
import type { Parsed } from '../../quantity/parsed';
import type { Working } from '../working';

/** A working that is asked "what if?", with the dive behind it. */
export interface Asked {
  readonly working: Working;
  /** The dive, and the script that says it where there is one: an edit keeps the script's rates and words. */
  readonly dive: Dive;
  readonly script?: string;
  /** As the working takes it: a unit's is the one it believes. */
  readonly timeline: Timeline;
  readonly sample: number;
  /** The unit that shows the reading, where it is not the model's own. */
  readonly watch?: Watch;
}

/** The dive and its unit with one number changed, and how long into the leg the moment asked for then is, s. */
export interface Changed {
  readonly dive: Dive;
  readonly intoLegS: number;
  readonly compartments?: Compartments;
  readonly setup?: Setup;
  readonly rules?: RuleSettings;
}

/** What turns a number of a working: the step, the setting or the coefficient that says it. */
export interface Knob {
  /** What the dive has room for, where that is other than what the working itself allows. */
  readonly within?: readonly [number, number];
  /** Refuses, in words, a number that the script can't say there. */
  turn(value: number): Parsed<Partial<Changed>>;
}
