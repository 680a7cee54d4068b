import type { Dive } from '../dive/dive';
import { legsOf } from '../dive/legs';
import { parseScript, type Notice } from '../dive/script';

/** Where the pressure was going when a checkpoint is read: further in, back out, or at none. */
export type Way = 'down' | 'up' | 'surface';

/** A moment of the run at which the units are read: the end of one step. */
export interface Checkpoint {
  readonly name: string;
  /** Index into the dive's steps, and of the leg it is on the clock. */
  readonly step: number;
  readonly leg: number;
  /** What the reference gauge should show, m on its own scale. */
  readonly gaugeM: number;
  readonly way: Way;
  /** The pressure is changing until this moment: what can be heard on the way counts, too. */
  readonly moving: boolean;
  /** Which hold it belongs to: how many changes of pressure have been. */
  readonly hold: number;
}

/** A pressure-chamber run: a dive script whose depths are those of the reference gauge, with checkpoints. */
export interface ChamberRun {
  readonly dive: Dive;
  readonly checkpoints: readonly Checkpoint[];
}

export type RunRead =
  | { readonly ok: true; readonly run: ChamberRun; readonly warnings: readonly Notice[] }
  | { readonly ok: false; readonly errors: readonly Notice[] };

const CHECK = /#[#\s]*check(?:point)?\b\s*:?\s*(.*)$/i;
const LONGEST_NAME = 60;
const MOST_CHECKPOINTS = 60;

/**
 * Reads a run from a dive script. A remark `# check: 10 m down` makes a checkpoint of the end of the step on its line or,
 * on a line of its own, of the step before it. Never throws.
 */
export function parseRun(script: string): RunRead {
  const parsed = parseScript(script);
  if (!parsed.ok) return parsed;
  const { dive } = parsed;
  const { legs } = legsOf(dive);
  const errors: Notice[] = [];
  const checkpoints: Checkpoint[] = [];
  let step = -1;
  dive.lines.forEach(({ text, stands }, lineIndex) => {
    if (stands.as === 'step') step = stands.index;
    const found = stands.as === 'setting' ? null : CHECK.exec(text);
    if (!found) return;
    const refuse = (message: string, mend: string) => {
      errors.push({ line: lineIndex + 1, column: found.index + 1, endColumn: text.length + 1, message, mend });
    };
    const leg = legs.findIndex((one) => one.step === step && one.endS > one.startS);
    const name = found[1]!.trim();
    if (name === '') refuse('This checkpoint has no name.', 'Write one after it, such as # check: 10 m down.');
    else if (name.length > LONGEST_NAME)
      refuse('The name of this checkpoint is too long.', `Keep it under ${LONGEST_NAME} letters.`);
    else if (checkpoints.some((other) => other.name === name))
      refuse(`There is another checkpoint “${name}”.`, 'Give each its own name: the readings go by it.');
    else if (leg < 0)
      refuse(
        'There is no step that takes time for this checkpoint to be the end of.',
        'Put it on the line of a hold, such as stay 1 min # check: 10 m down.',
      );
    else if (checkpoints.length === MOST_CHECKPOINTS)
      refuse(`A run has at most ${MOST_CHECKPOINTS} checkpoints.`, 'Split it into two runs.');
    else {
      const { interval, fromM, toM } = legs[leg]!;
      const hold = legs.slice(0, leg + 1).filter((one) => one.fromM !== one.toM).length;
      checkpoints.push({
        name,
        step,
        leg,
        gaugeM: interval ? 0 : toM,
        way: wayAt(legs, leg),
        moving: fromM !== toM,
        hold,
      });
    }
  });
  if (errors.length === 0 && checkpoints.length === 0) {
    errors.push({
      line: 1,
      column: 1,
      endColumn: 2,
      message: 'This run has no checkpoint.',
      mend: 'Put “# check:” and a name at the end of the line of a hold, such as stay 1 min # check: 10 m down.',
    });
  }
  return errors.length > 0
    ? { ok: false, errors }
    : { ok: true, run: { dive, checkpoints }, warnings: parsed.warnings };
}

function wayAt(legs: ReturnType<typeof legsOf>['legs'], leg: number): Way {
  if (legs[leg]!.interval || legs[leg]!.toM === 0) return 'surface';
  for (let i = leg; i >= 0; i -= 1) {
    const { fromM, toM } = legs[i]!;
    if (fromM !== toM) return toM > fromM ? 'down' : 'up';
  }
  return 'surface';
}
