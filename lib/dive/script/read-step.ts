import { parseDepth } from '../../quantity/depth';
import { writeTime } from '../../quantity/duration';
import { plainText } from '../../quantity/number';
import { accepted, quoted, refused, type Parsed } from '../../quantity/parsed';
import { parseRate } from '../../quantity/rate';
import { parseTime } from '../../quantity/time';
import { splitClauses, type Clause } from './clauses';
import { DEEPEST_M, LONGEST_S, SHORTEST_S } from '../bounds';
import type { Step } from '../dive';
import { parseGas } from '../gas-text';
import { FASTEST_M_MIN } from './leg-rate';
import type { Part, Span, Speed, StepRead, Trouble } from './line';
import { SURFACE } from './step-words';
import { readPlainTime } from './setting-values';

/** A step has two values; a line with many more is no step, and is not picked apart to its end. */
const MOST_CLAUSES = 6;

/** A line whose first words are known to begin a step. */
export interface StepLine {
  readonly line: string;
  readonly plain: string;
  readonly kind: Step['kind'];
  readonly phrase: string;
  readonly verb: Span;
  /** Where the values begin and end. */
  readonly values: Span;
}

export interface StepResult {
  readonly step: StepRead;
  readonly troubles: readonly Trouble[];
}

/** Reads the values of a step. */
export function readStep(step: StepLine): StepResult {
  const all = splitClauses(step.line, step.plain, ...step.values);
  const troubles: Trouble[] = [];
  const clauses = all.slice(0, MOST_CLAUSES);
  const over = all[MOST_CLAUSES];
  if (over)
    troubles.push(misfit(step, { ...over, whole: [over.whole[0], step.values[1]] }, 'Write one step on a line.'));
  switch (step.kind) {
    case 'descend':
    case 'ascend':
      return { step: readLeg(step, step.kind, clauses, troubles), troubles };
    case 'stay':
    case 'interval':
      return { step: { kind: step.kind, timeS: readWait(step, step.kind, clauses, troubles) }, troubles };
    case 'switch':
      return { step: { kind: 'switch', gas: readSwitch(step, clauses, troubles) }, troubles };
  }
}

function readLeg(
  step: StepLine,
  kind: 'descend' | 'ascend',
  clauses: readonly Clause[],
  troubles: Trouble[],
): StepRead {
  let depthM: Part<number> | undefined = step.phrase === SURFACE ? { span: step.verb, value: 0 } : undefined;
  let speed: Part<Speed> | undefined;
  const usual = kind === 'descend' ? 'at 18 m/min' : 'at 9 m/min';
  const hasTo = clauses.some(({ word }) => word === 'to');
  for (const clause of clauses) {
    const isDepth = clause.word === 'to' || (clause.word === '' && !hasTo);
    const isSpeed = ['at', 'in', 'over', 'within'].includes(clause.word);
    if (isDepth && !depthM) depthM = part(clause, readDepth(clause.text), troubles);
    else if (isSpeed && !speed) speed = part(clause, readSpeed(clause), troubles);
    else
      troubles.push(
        misfit(step, clause, isDepth ? 'Give one depth.' : isSpeed ? 'Give one rate or time.' : legMend(clause)),
      );
  }
  const span: Span = [step.verb[0], step.values[1]];
  if (!depthM)
    troubles.push({
      span,
      what: 'This step gives no depth.',
      mend: `Write “${step.phrase} to ${kind === 'descend' ? '30' : '5'} m ${usual}”.`,
    });
  else if (!speed && troubles.length === 0)
    troubles.push({ span, what: 'This step does not say how fast.', mend: `Add “${usual}” or “in 2 min”.` });
  return { kind, depthM, speed };
}

function legMend(clause: Clause): string {
  const time = parseTime(clause.text);
  return time.ok
    ? `Write “in ${clause.text}” for how long it takes; write “stay ${clause.text}” on a line of its own to stay there.`
    : 'Leave it out, or put # before a remark.';
}

function readDepth(text: string): Parsed<number> {
  if (/^(?:the\s+)?surface$/.test(plainText(text))) return accepted(0);
  if (text === '') return refused('No depth is written here.', 'Write a depth such as 30 m or 100 ft.');
  const read = parseDepth(text);
  if (!read.ok || read.value <= DEEPEST_M) return read;
  return refused(`${quoted(text)} is deeper than this model goes.`, `Write at most ${DEEPEST_M} m.`);
}

function readSpeed({ word, text }: Clause): Parsed<Speed> {
  if (word === 'at') {
    if (text === '') return refused('No rate is written here.', 'Write a rate such as 9 m/min or 30 ft/min.');
    const rate = parseRate(text);
    if (rate.ok) return rate.value <= FASTEST_M_MIN ? accepted({ by: 'rate', mMin: rate.value }) : tooFast(text);
    return parseTime(text).ok ? refused(rate.what, `Write “in ${text}” for a time, or “at 9 m/min” for a rate.`) : rate;
  }
  const time = readLength(text, parseTime(text));
  if (time.ok) return accepted({ by: 'time', s: time.value });
  return parseRate(text).ok ? refused(`${quoted(text)} is a rate, not a time.`, `Write “at ${text}”.`) : time;
}

function tooFast(text: string): Parsed<Speed> {
  return refused(`${quoted(text)} is faster than this model takes.`, `Write at most ${FASTEST_M_MIN} m/min.`);
}

function readWait(
  step: StepLine,
  kind: 'stay' | 'interval',
  clauses: readonly Clause[],
  troubles: Trouble[],
): Part<number> {
  let timeS: Part<number> | undefined;
  for (const clause of clauses) {
    const isTime = clause.word === '' || clause.word === 'for';
    if (!isTime) troubles.push(misfit(step, clause, waitMend(step, kind, clauses)));
    else if (timeS) troubles.push(misfit(step, clause, 'Give one time.'));
    // People write intervals as hours and minutes, so there the clock form is in doubt.
    else
      timeS = part(
        clause,
        readLength(clause.text, kind === 'interval' ? readPlainTime(clause.text) : parseTime(clause.text)),
        troubles,
      );
  }
  if (timeS) return timeS;
  if (clauses.length === 0) {
    const example = kind === 'stay' ? '20 min' : '60 min';
    troubles.push({
      span: step.verb,
      what: 'This step does not say how long.',
      mend: `Write “${step.phrase} ${example}”.`,
    });
  }
  return { span: step.verb, value: undefined };
}

function waitMend(step: StepLine, kind: 'stay' | 'interval', clauses: readonly Clause[]): string {
  const time = clauses.find(({ word, text }) => (word === '' || word === 'for') && parseTime(text).ok)?.text ?? '3 min';
  const plain = `Write “${step.phrase} ${time}”`;
  return kind === 'stay'
    ? `${plain}: it is where the step before ended. Go there first, in a step of its own.`
    : `${plain}: it is always at the surface.`;
}

function readLength(text: string, read: Parsed<number>): Parsed<number> {
  if (!read.ok) return read;
  if (read.value === 0) return refused(`${quoted(text)} is no time at all.`, 'Write a time of at least a second.');
  if (read.value < SHORTEST_S)
    return refused(`${quoted(text)} is too short to tell from no time.`, 'Write a time of at least a second.');
  return read.value > LONGEST_S
    ? refused(`${quoted(text)} is longer than this model follows.`, `Write at most ${writeTime(LONGEST_S)}.`)
    : read;
}

function readSwitch(
  step: StepLine,
  clauses: readonly Clause[],
  troubles: Trouble[],
): Extract<StepRead, { kind: 'switch' }>['gas'] {
  const [first, ...rest] = clauses;
  for (const clause of rest)
    troubles.push(misfit(step, clause, 'Change depth in a step of its own, then switch there.'));
  if (first && (first.word === '' || first.word === 'to')) return part(first, parseGas(first.text), troubles);
  const span = first?.span ?? step.verb;
  troubles.push({
    span,
    what: 'This step does not name a gas.',
    mend: 'Write “switch to 50%”, “switch to oxygen” or “switch to 18/45”.',
  });
  return { span, value: undefined };
}

/** A clause's value; what is wrong with it goes to the troubles. */
function part<T>(clause: Clause, read: Parsed<T>, troubles: Trouble[]): Part<T> {
  if (read.ok) return { span: clause.span, value: read.value };
  const [from, to] = read.at ?? [0, clause.span[1] - clause.span[0]];
  troubles.push({ span: [clause.span[0] + from, clause.span[0] + to], what: read.what, mend: read.mend });
  return { span: clause.span, value: undefined };
}

function misfit(step: StepLine, clause: Clause, mend: string): Trouble {
  return { span: clause.whole, what: `${quoted(step.line.slice(...clause.whole))} does not fit in this step.`, mend };
}
