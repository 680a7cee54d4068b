import { AT_SURFACE_M, LEFT_OUT, walkFaults } from './faults';
import { ADDED_ASCENT_M_MIN, isMissingDescent, missingDescentS, type FindingKind } from './check-record';
import { pickSamples, UNIT_CHANNELS, type Recording, type UnitChannel } from './record';

/** Says for each finding, by kind and row, whether a person lets it be repaired. */
export type Consent = (kind: FindingKind, row: number) => boolean;

export interface Repaired {
  /** One recording, or more where time began again. */
  readonly recordings: readonly Recording[];
  /** How many samples each repair touched. */
  readonly done: Partial<Readonly<Record<FindingKind, number>>>;
}

/** Consent to every repair of some kinds. */
export function consentToKinds(kinds: Iterable<FindingKind>): Consent {
  const given = new Set(kinds);
  return (kind) => given.has(kind);
}

/** Repairs what a person consents to, as its finding said, and nothing else. The recording given is left as it is. */
export function repairRecord(recording: Recording, consent: Consent): Repaired {
  const done: Partial<Record<FindingKind, number>> = {};
  const count = (kind: FindingKind) => (done[kind] = (done[kind] ?? 0) + 1);
  const { length } = recording.timeS;
  const dropped = new Uint8Array(length);
  const surfaced: number[] = [];
  const restarts: number[] = [];
  walkFaults(recording, (fault, index) => {
    if (!consent(fault, recording.row[index]!)) return;
    count(fault);
    if (LEFT_OUT.has(fault)) dropped[index] = 1;
    else if (fault === 'negative') surfaced.push(index);
    else if (fault === 'restart') restarts.push(index);
  });
  let mended = withGases(recording, consent, count);
  if (surfaced.length > 0) {
    const depthM = recording.depthM.slice();
    for (const index of surfaced) depthM[index] = 0;
    mended = { ...mended, depthM };
  }
  const bounds = [0, ...restarts, length];
  const recordings: Recording[] = [];
  for (let part = 0; part + 1 < bounds.length; part += 1) {
    const kept: number[] = [];
    for (let i = bounds[part]!; i < bounds[part + 1]!; i += 1) if (!dropped[i]) kept.push(i);
    if (kept.length === 0) continue;
    const whole = kept.length === length ? mended : pickSamples(mended, kept);
    recordings.push(withEnds(restarts.length > 0 ? partOf(whole, recording, part, bounds) : whole, consent, count));
  }
  return { recordings, done };
}

/** Without the names of gases that nobody understood, where a person lets the gas before go on. */
function withGases(recording: Recording, consent: Consent, count: (kind: FindingKind) => void): Recording {
  const unread = recording.unread.filter(({ of, row }) => of !== 'gas' || !consent('gas', row));
  for (let i = unread.length; i < recording.unread.length; i += 1) count('gas');
  return unread.length === recording.unread.length ? recording : { ...recording, unread };
}

/** One dive of a record whose time began again: its own gases, and no clock that it shares with the others. */
function partOf(part: Recording, whole: Recording, index: number, bounds: readonly number[]): Recording {
  const samples = whole.timeS.subarray(bounds[index]!, bounds[index + 1]!);
  const latest = samples.reduce((most, time) => (time > most ? time : most), 0);
  // Gas changes are told by time alone: those of the first dive are known, a later dive's are asked for anew.
  const switches = index === 0 ? whole.switches.filter(({ timeS }) => timeS <= latest) : [];
  const name = index === 0 ? part.name : `${part.name}, part ${index + 1}`;
  return {
    ...part,
    name,
    switches,
    clockS: undefined,
    ...(index > 0 && { startedAt: undefined, intervalBeforeS: undefined }),
  };
}

function withEnds(recording: Recording, consent: Consent, count: (kind: FindingKind) => void): Recording {
  let mended = recording;
  const { row, timeS, depthM } = recording;
  const firstM = depthM[0]!;
  if (isMissingDescent(timeS[0]!, firstM) && consent('start', row[0]!)) {
    count('start');
    const descentS = missingDescentS(firstM);
    const shiftS = descentS - timeS[0]!;
    const later = timeS.map((time) => time + shiftS);
    const switches = mended.switches.map((change) => ({
      ...change,
      timeS: change.timeS <= timeS[0]! ? 0 : change.timeS + shiftS,
    }));
    mended = withSample({ ...mended, timeS: later, switches }, 0, 0, 0);
  }
  const last = timeS.length - 1;
  const lastM = depthM[last]!;
  if (lastM > AT_SURFACE_M && consent('end', row[last]!)) {
    count('end');
    const end = mended.timeS.length;
    mended = withSample(mended, end, mended.timeS[end - 1]! + Math.ceil((lastM * 60) / ADDED_ASCENT_M_MIN), 0);
  }
  return mended;
}

/** A recording with one more sample, of which the unit told nothing. */
function withSample(recording: Recording, at: number, timeS: number, depthM: number): Recording {
  const add = (values: Float64Array, value: number) => {
    const wider = new Float64Array(values.length + 1);
    wider.set(values.subarray(0, at));
    wider[at] = value;
    wider.set(values.subarray(at), at + 1);
    return wider;
  };
  const row = new Uint32Array(recording.row.length + 1);
  row.set(recording.row.subarray(0, at));
  row[at] = recording.row[Math.min(at, recording.row.length - 1)]!;
  row.set(recording.row.subarray(at), at + 1);
  const unit: Partial<Record<UnitChannel, Float64Array>> = {};
  for (const channel of UNIT_CHANNELS) {
    const values = recording.unit[channel];
    if (values) unit[channel] = add(values, NaN);
  }
  return {
    ...recording,
    row,
    timeS: add(recording.timeS, timeS),
    depthM: add(recording.depthM, depthM),
    unit,
    temperatureC: recording.temperatureC && add(recording.temperatureC, NaN),
  };
}

/** How much later the samples of a mended recording are than as they were read, s: by the descent that was put in before them. */
export function laterS(mended: Recording, read: Recording): number {
  // A sample that was put in before the others has the row of the one it was put in before.
  const first = mended.row[0] === mended.row[1] ? 1 : 0;
  return mended.timeS[first]! - read.timeS[read.row.indexOf(mended.row[first]!)]!;
}
