import { writeTime } from '../../quantity/duration';
import { plainText } from '../../quantity/number';
import { accepted, quoted, refused, refusedFor, type Parsed, type Refusal } from '../../quantity/parsed';
import { parseRate } from '../../quantity/rate';
import { parseTime } from '../../quantity/time';
import { splitClauses, type Clause } from './clauses';
import { LONGEST_S, SHORTEST_S } from '../bounds';
import type { Step } from '../dive';
import { parseGas } from '../gas-text';
import { FASTEST_M_MIN } from './leg-rate';
import { instead, type Fix, type Part, type Span, type Speed, type StepRead, type Trouble } from './line';
import { SURFACE } from './step-words';
import { readPlainTime } from './settings/setting-values';
import { parseWorkingDepth } from '../working-depth';

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
  const hasTo = clauses.some(({ word }) => word === 'to');
  for (const clause of clauses) {
    const isDepth = clause.word === 'to' || (clause.word === '' && !hasTo);
    const isSpeed = ['at', 'in', 'over', 'within'].includes(clause.word);
    if (isDepth && !depthM) depthM = part(clause, readDepth(clause.text), troubles);
    else if (isSpeed && !speed) speed = part(clause, readSpeed(clause), troubles, clause.whole);
    else if (isDepth) troubles.push(misfit(step, clause, 'Give one depth.', [without(clause)]));
    else if (isSpeed) troubles.push(misfit(step, clause, 'Give one rate or time.', [without(clause)]));
    else troubles.push(misfit(step, clause, ...legMend(step, clause)));
  }
  const span: Span = [step.verb[0], step.values[1]];
  if (!depthM) {
    const depths = kind === 'descend' ? ['30 m', '100 ft'] : ['5 m', '15 ft'];
    const end = step.verb[1];
    troubles.push({
      span,
      what: 'This step gives no depth.',
      mend: `Write a depth after it, such as “${step.phrase} to ${depths[0]}” or “${step.phrase} to ${depths[1]}”.`,
      fixes: depths.map((depth) => ({ span: [end, end], text: ` to ${depth}`, label: `${step.phrase} to ${depth}` })),
    });
  }
  return { kind, depthM, speed };
}

function legMend(step: StepLine, { text, whole }: Clause): [mend: string, fixes: Fix[]] {
  if (!parseTime(text).ok)
    return [
      'Leave it out, or put # before a remark.',
      [{ span: [whole[0], whole[0]], text: '# ', label: 'Make it a remark' }],
    ];
  const [from, end] = [step.line.slice(0, whole[0]).trimEnd().length, step.line.length];
  return [
    `Write “in ${text}” for how long it takes; write “stay ${text}” on a line of its own to stay there.`,
    [
      { span: whole, text: `in ${text}` },
      { span: [from, end], text: `${step.line.slice(whole[1])}\nstay ${text}`, label: `stay ${text}` },
    ],
  ];
}

function without({ whole }: Clause): Fix {
  return { span: whole, text: '', label: 'Leave it out' };
}

function readDepth(text: string): Parsed<number> {
  if (/^(?:the\s+)?surface$/.test(plainText(text))) return accepted(0);
  if (text === '') return refused('No depth is written here.', 'Write a depth such as 30 m or 100 ft.');
  return parseWorkingDepth(text);
}

function readSpeed({ word, text }: Clause): Parsed<Speed> {
  if (word === 'at') {
    if (text === '') return refused('No rate is written here.', 'Write a rate such as 9 m/min or 30 ft/min.');
    const rate = parseRate(text);
    if (rate.ok) return rate.value <= FASTEST_M_MIN ? accepted({ by: 'rate', mMin: rate.value }) : tooFast(text);
    return parseTime(text).ok
      ? refusedFor(rate.what, `Write “in ${text}” for a time, or “at 9 m/min” for a rate.`, [`in ${text}`])
      : withWord('at', rate);
  }
  const time = readLength(text, parseTime(text));
  if (time.ok) return accepted({ by: 'time', s: time.value });
  return parseRate(text).ok
    ? refusedFor(`${quoted(text)} is a rate, not a time.`, `Write “at ${text}”.`, [`at ${text}`])
    : withWord(word, time);
}

/** What mends the value, with the word before it. */
function withWord(word: string, refusal: Refusal): Refusal {
  return refusal.instead ? { ...refusal, instead: refusal.instead.map((text) => `${word} ${text}`) } : refusal;
}

function tooFast(text: string): Parsed<Speed> {
  const most = `${FASTEST_M_MIN} m/min`;
  return refusedFor(`${quoted(text)} is faster than this model takes.`, `Write at most ${most}.`, [`at ${most}`]);
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
    if (!isTime) troubles.push(misfit(step, clause, ...waitMend(step, kind, clauses)));
    else if (timeS) troubles.push(misfit(step, clause, 'Give one time.', [without(clause)]));
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
      fixes: instead(step.verb, [`${step.phrase} ${example}`]),
    });
  }
  return { span: step.verb, value: undefined };
}

function waitMend(step: StepLine, kind: 'stay' | 'interval', clauses: readonly Clause[]): [mend: string, fixes: Fix[]] {
  const time = clauses.find(({ text }) => parseTime(text).ok)?.text ?? '3 min';
  const text = `${step.phrase} ${time}`;
  const why =
    kind === 'stay'
      ? 'it is where the step before ended. Go there first, in a step of its own.'
      : 'it is always at the surface.';
  return [`Write “${text}”: ${why}`, [{ span: [step.verb[0], step.values[1]], text }]];
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
    fixes: instead([step.verb[0], step.values[1]], ['switch to 50%', 'switch to oxygen', 'switch to 18/45']),
  });
  return { span, value: undefined };
}

/** A clause's value; what is wrong with it goes to the troubles, what mends it for `fixed` or what is wrong. */
function part<T>(clause: Clause, read: Parsed<T>, troubles: Trouble[], fixed?: Span): Part<T> {
  if (read.ok) return { span: clause.span, value: read.value };
  const [from, to] = read.at ?? [0, clause.span[1] - clause.span[0]];
  const span: Span = [clause.span[0] + from, clause.span[0] + to];
  troubles.push({ span, what: read.what, mend: read.mend, fixes: instead(fixed ?? span, read.instead) });
  return { span: clause.span, value: undefined };
}

function misfit(step: StepLine, clause: Clause, mend: string, fixes?: readonly Fix[]): Trouble {
  return {
    span: clause.whole,
    what: `${quoted(step.line.slice(...clause.whole))} does not fit in this step.`,
    mend,
    fixes,
  };
}
