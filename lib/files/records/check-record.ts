import { FASTEST_M_MIN } from '../../dive/script/leg-rate';
import { atMost } from '../../quantity/number';
import { writeTime } from '../../quantity/duration';
import { quoted } from '../../quantity/parsed';
import { AT_SURFACE_M, BLOCKING, LEFT_OUT, walkFaults, type Fault } from './faults';
import type { Recording } from './record';

/** A fault of samples, or of the record as a whole. */
export type FindingKind = Fault | 'gap' | 'start' | 'end' | 'gas';

/** Something a person should know of a record, and what would be done about it with their consent. */
export interface Finding {
  readonly kind: FindingKind;
  /** Row or waypoint it begins at, and ends at. */
  readonly row: number;
  readonly lastRow: number;
  /** Where in the record it begins: its time, s, and depth, m, as they were written; NaN where they cannot be read. */
  readonly at: { readonly timeS: number; readonly depthM: number };
  /** Samples concerned. */
  readonly count: number;
  readonly what: string;
  /** What a repair would do; undefined where there is nothing to repair and the record is taken as it is. */
  readonly repair: string | undefined;
  /** No dive can be made of the record until it is repaired. */
  readonly blocking: boolean;
}

export interface RecordCheck {
  /** In the order of the rows; of each kind at most `MOST_LISTED`. */
  readonly findings: readonly Finding[];
  /** How many samples each kind concerns, the unlisted included. */
  readonly counts: Partial<Readonly<Record<FindingKind, number>>>;
}

const MOST_LISTED = 100;
/** A descent and an ascent that a record leaves out are put in at these rates, m/min: common practice, no single source. */
const ADDED_DESCENT_M_MIN = 18;
export const ADDED_ASCENT_M_MIN = 9;
/** A record that begins below the surface has this long to have come down, s; otherwise a descent is missing. */
const LATE_FIRST_SAMPLE_S = 120;

/** Looks a record over, once from beginning to end. Nothing is changed. */
export function checkRecord(recording: Recording): RecordCheck {
  const findings: Finding[] = [];
  const counts: Partial<Record<FindingKind, number>> = {};
  const listed: Partial<Record<FindingKind, number>> = {};
  const { row } = recording;
  const add = (kind: FindingKind, first: number, last: number, what: string, repair: string | undefined) => {
    const count = last - first + 1;
    counts[kind] = (counts[kind] ?? 0) + count;
    listed[kind] = (listed[kind] ?? 0) + 1;
    if (listed[kind] > MOST_LISTED) return;
    findings.push({
      kind,
      row: row[first]!,
      lastRow: row[last]!,
      at: sampleOf(recording, first),
      count,
      what,
      repair,
      blocking: BLOCKING.has(kind),
    });
  };

  let firstGood = 0;
  let run: { fault: Fault; first: number; last: number } | undefined;
  const close = () => {
    if (run)
      add(run.fault, run.first, run.last, sentence(recording, run.fault, run.first, run.last), REPAIRS[run.fault]);
    run = undefined;
  };
  walkFaults(recording, (fault, index) => {
    if (index === firstGood && LEFT_OUT.has(fault)) firstGood += 1;
    if (run && run.fault === fault && run.last === index - 1 && fault !== 'restart') run.last = index;
    else {
      close();
      run = { fault, first: index, last: index };
    }
  });
  close();
  addStart(recording, firstGood, add);
  addGaps(recording, add);
  addEnd(recording, add);
  addGases(recording, findings, counts);
  return { findings: findings.sort((one, other) => one.row - other.row), counts };
}

function sampleOf({ timeS, depthM }: Recording, index: number): Finding['at'] {
  return { timeS: timeS[index] ?? NaN, depthM: depthM[index] ?? NaN };
}

/** Each name of a gas that is not understood, once: what is breathed from there on is not known. */
function addGases(recording: Recording, findings: Finding[], counts: Partial<Record<FindingKind, number>>): void {
  const named = new Set<string>();
  for (const { row, text, of } of recording.unread) {
    if (of !== 'gas') continue;
    counts.gas = (counts.gas ?? 0) + 1;
    if (named.has(text)) continue;
    named.add(text);
    findings.push({
      kind: 'gas',
      row,
      lastRow: row,
      at: sampleOf(recording, recording.row.indexOf(row)),
      count: 1,
      what: `${place(recording, row)}: the gas ${quoted(text)} is not understood.`,
      repair: 'Go on with the gas before it; with air, where there is none.',
      blocking: true,
    });
  }
}

type Add = (kind: FindingKind, first: number, last: number, what: string, repair: string | undefined) => void;

const REPAIRS: Readonly<Record<Fault, string>> = {
  unreadable: 'Leave it out.',
  restart: 'Make a dive of its own of what follows; you say how long the surface interval was.',
  backwards: 'Leave out what is earlier than the sample before.',
  repeat: 'Keep the first sample of each time.',
  negative: 'Take it as the surface, 0 m.',
  tooDeep: 'Leave it out.',
  jump: `Leave out what cannot be reached at ${FASTEST_M_MIN} m/min.`,
  spike: 'Leave it out; the depth then runs straight from the sample before to the one after.',
};

function place({ rowsAre }: Recording, from: number, to = from): string {
  const name = rowsAre === 'row' ? 'Row' : 'Waypoint';
  return from === to ? `${name} ${from}` : `${name}s ${from} to ${to}`;
}

function sentence(recording: Recording, fault: Fault, first: number, last: number): string {
  const { row, timeS, depthM, unread } = recording;
  const where = place(recording, row[first]!, row[last]!);
  const depth = `${atMost(depthM[first]!, 2)} m`;
  const time = `${atMost(timeS[first]!, 3)} s`;
  switch (fault) {
    case 'unreadable': {
      const cell = unread.find((other) => other.row === row[first]!);
      if (cell === undefined) return `${where}: the time or the depth cannot be read.`;
      return cell.text.trim() === ''
        ? `${where}: the ${cell.of} is missing.`
        : `${where}: ${quoted(cell.text)} is not a ${cell.of}.`;
    }
    case 'restart':
      return `${where}: the time begins again at ${time}, as if another dive began here.`;
    case 'backwards':
      return `${where}: the time goes backwards to ${time}.`;
    case 'repeat':
      return `${where}: the time ${time} was there already.`;
    case 'negative':
      return `${where}: the depth is negative (${depth}).`;
    case 'tooDeep':
      return `${where}: the depth (${depth}) is beyond anything the model takes.`;
    case 'jump':
      return `${where}: the depth leaps to ${depth}, faster than ${FASTEST_M_MIN} m/min.`;
    case 'spike':
      return `${where}: the depth leaps to ${depth} and back.`;
  }
}

/** @param first the first sample that no repair would leave out */
function addStart(recording: Recording, first: number, add: Add): void {
  const { timeS, depthM } = recording;
  if (first >= timeS.length || !isMissingDescent(timeS[first]!, depthM[first]!)) return;
  const what = `${place(recording, recording.row[first]!)}: the record begins at ${atMost(depthM[first]!, 2)} m, not at the surface.`;
  add(
    'start',
    first,
    first,
    what,
    `Put a descent of ${writeTime(missingDescentS(depthM[first]!))} at ${ADDED_DESCENT_M_MIN} m/min before it.`,
  );
}

/** Whether a record that begins so, s and m, lacks its descent: it starts under water, at once or very late. */
export function isMissingDescent(firstS: number, firstM: number): boolean {
  return firstM > 0 && (firstS <= 0 || firstS > LATE_FIRST_SAMPLE_S);
}

/** Whole seconds, as a person would write them. */
export function missingDescentS(depthM: number): number {
  return Math.max(1, Math.ceil((depthM * 60) / ADDED_DESCENT_M_MIN));
}

function addEnd(recording: Recording, add: Add): void {
  const last = recording.depthM.length - 1;
  const depth = recording.depthM[last]!;
  if (!(depth > AT_SURFACE_M)) return;
  const what = `${place(recording, recording.row[last]!)}: the record ends at ${atMost(depth, 2)} m, not at the surface.`;
  add('end', last, last, what, `Put an ascent at ${ADDED_ASCENT_M_MIN} m/min after it.`);
}

/** A step so many times longer than usual, and at least so long, is a gap. */
const GAP_STEPS = 5;
const GAP_S = 30;
const STEPS_LOOKED_AT = 10_000;
const REGULAR_SHARE = 0.8;

/** Gaps are told only of records sampled at regular times: elsewhere a long step is how a straight line is written. */
function addGaps(recording: Recording, add: Add): void {
  const { timeS, depthM, row } = recording;
  const usual = usualStepS(timeS);
  if (usual === undefined) return;
  const leastS = Math.max(GAP_S, GAP_STEPS * usual);
  for (let i = 1; i < timeS.length; i += 1) {
    const step = timeS[i]! - timeS[i - 1]!;
    if (!(step > leastS) || (depthM[i]! <= AT_SURFACE_M && depthM[i - 1]! <= AT_SURFACE_M)) continue;
    const what = `${place(recording, row[i]!)}: nothing was recorded for ${writeTime(Math.round(step))} before it. The depth is taken to run straight from ${atMost(depthM[i - 1]!, 2)} m to ${atMost(depthM[i]!, 2)} m.`;
    add('gap', i, i, what, undefined);
  }
}

/** The step most samples are apart, s; undefined where there is no such step. */
export function usualStepS(timeS: Float64Array): number | undefined {
  const steps: number[] = [];
  const stride = Math.max(1, Math.floor(timeS.length / STEPS_LOOKED_AT));
  for (let i = 1; i < timeS.length; i += stride) {
    const step = timeS[i]! - timeS[i - 1]!;
    if (step > 0) steps.push(step);
  }
  if (steps.length < 10) return undefined;
  const median = steps.sort((one, other) => one - other)[steps.length >> 1]!;
  const regular = steps.filter((step) => Math.abs(step - median) <= median / 2).length;
  return regular >= REGULAR_SHARE * steps.length ? median : undefined;
}
