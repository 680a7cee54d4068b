import { LONGEST_S, SHORTEST_S } from '../../dive/bounds';
import { diveSchema, type Dive, type Settings, type Step } from '../../dive/dive';
import { defaultSettings } from '../../dive/default-settings';
import { AIR, sameGas, type Gas } from '../../physics/gas';
import { barPerMetre } from '../../physics/water';
import { sayDepth } from '../../quantity/depth';
import { tidy } from '../../quantity/number';
import { printHours } from '../../quantity/duration';
import { accepted, refused, type Parsed, type Refusal } from '../../quantity/parsed';
import { sayIssue } from '../../quantity/schema-words';
import { compartments } from '../../tissue/coefficients';
import { ADDED_ASCENT_M_MIN, checkRecord, isMissingDescent, type FindingKind } from './check-record';
import { BLOCKING, walkFaults } from './faults';
import { profileOf, type RecordProfile } from './record-profile';
import type { Recording } from './record';
import { DEFAULT_CLOSENESS, simplify, type Closeness } from './simplify';
import { FROM_REST_S, intervalsAtOdds, intervalsInScript, surfaceIntervals } from './surface-intervals';
import { stepTo } from '../../dive/step-to';

/** Steps a dive made of records may have: its script stays within what an editor takes. */
const MOST_STEPS = 4000;
/** A record of so few straight stretches is taken exactly as it is. */
const KEPT_EXACTLY = 200;

/** How many times the closeness asked for may be loosened to stay within the steps; what came of it is told. */
const LOOSEST = 64;

export interface RecordOptions {
  /** What the file does not tell: site, model, gradient factors. What is left out is the file's, else the default. */
  readonly settings?: Partial<Settings> | undefined;
  /** Time at the surface before each recording, s, where the file does not tell or is not to be believed. */
  readonly intervalsS?: readonly (number | undefined)[] | undefined;
  readonly closeness?: Closeness | undefined;
}

export interface DiveOfRecords {
  readonly dive: Dive;
  /** Plain sentences: what was assumed or added. */
  readonly notes: readonly string[];
  /** The dive's samples and tissues are within this of the record's, at every sample. */
  readonly depthErrorM: number;
  readonly tissueErrorBar: number;
  /** For each recording, what its times are short of the dive's clock, s. */
  readonly offsetS: readonly number[];
}

/**
 * Makes one dive of recordings, in their order, with the surface intervals between them, so that the tissues carry over
 * from each to the next. Refuses a record with faults that make it no dive at all; they are repaired first, by consent.
 */
export function diveFromRecords(recordings: readonly Recording[], options: RecordOptions = {}): Parsed<DiveOfRecords> {
  const [first] = recordings;
  if (!first) return refused('There is no dive in the file.', 'Choose a file that holds one.');
  for (const recording of recordings) {
    const refusal = blockedBy(recording);
    if (refusal) return refusal;
  }
  const told = surfaceIntervals(recordings).map((intervalS, i) => options.intervalsS?.[i] ?? intervalS);
  const unknown = told.findIndex((intervalS) => intervalS === undefined || !(intervalS >= 0));
  if (unknown >= 0) {
    return refused(
      `The file does not tell the surface interval before “${recordings[unknown]!.name}”.`,
      'Say how long it was, or bring that dive alone.',
    );
  }
  const undecided = recordings.find(({ firstGas }) => (firstGas?.possible.length ?? 0) > 1);
  if (undecided && options.settings?.gas === undefined)
    return refused(undecided.firstGas!.from, 'Say which gas it was.');
  const settings = settingsFor(first, options.settings);
  const { intervalsS, cut } = intervalsInScript(told as number[], recordings);
  const notes: string[] = recordings.flatMap(({ firstGas }) =>
    firstGas?.possible.length === 1 ? [firstGas.from] : [],
  );
  if (!options.intervalsS?.some((intervalS) => intervalS !== undefined)) notes.push(...intervalsAtOdds(recordings));
  if (cut)
    notes.push(
      `A surface interval is given as ${printHours(FROM_REST_S)}: a script follows one week, and by then less than 1% of what the slowest compartment took up is left.`,
    );
  const profiles = recordings.map((recording) => profileOf(recording));
  const closeness = options.closeness ?? DEFAULT_CLOSENESS;
  let made = stepsOf(recordings, profiles, intervalsS, settings, closeness, notes);
  for (let times = 2; made.steps.length > MOST_STEPS && times <= LOOSEST; times *= 2) {
    const looser = { tissueBar: closeness.tissueBar * times, depthM: closeness.depthM * times };
    made = stepsOf(recordings, profiles, intervalsS, settings, looser, []);
  }
  const longS = made.steps.reduce((sum, step) => sum + ('durationS' in step ? step.durationS : 0), 0);
  if (longS > LONGEST_S) {
    return refused(
      `Together these dives and the time between them take ${printHours(longS)}; a script follows one week.`,
      'Bring fewer of them at a time.',
    );
  }
  if (made.steps.length > MOST_STEPS) {
    return refused(
      `Together these records would need ${made.steps.length} steps; a dive has at most ${MOST_STEPS}.`,
      'Bring fewer of them at a time.',
    );
  }
  if (recordings.every(({ switches }) => switches.length === 0) && options.settings?.gas === undefined) {
    notes.push('The file does not tell the gas: air is assumed.');
  }
  const dive: Dive = { settings, steps: made.steps, lines: [] };
  const valid = diveSchema.safeParse(dive);
  if (!valid.success) {
    const [issue] = valid.error.issues;
    return refused(`This record makes no dive. ${sayIssue(issue!)}.`, 'Check its units, depths and times.');
  }
  const { depthErrorM, tissueErrorBar, offsetS } = made;
  return accepted({ dive, notes, depthErrorM, tissueErrorBar, offsetS });
}

function blockedBy(recording: Recording): Refusal | undefined {
  if (recording.timeS.length < 2)
    return refused(`“${recording.name}” has fewer than two samples.`, 'Leave it out, or bring a longer record.');
  if (!mayBeBlocked(recording)) return undefined;
  const { findings, counts } = checkRecord(recording);
  const blocking = findings.filter((finding) => finding.blocking);
  const [first] = blocking;
  if (!first) return undefined;
  const samples = [...BLOCKING].reduce((sum, kind) => sum + (counts[kind as FindingKind] ?? 0), 0);
  const kinds = new Set(blocking.map(({ kind }) => kind)).size;
  const others = samples - first.count;
  const more =
    others > 0
      ? ` ${others === 1 ? 'One sample more' : `${others} samples more`} of “${recording.name}” ${others === 1 ? 'has' : 'have'} ${kinds > 1 ? 'this or other faults' : 'the same fault'}.`
      : '';
  return refused(`${first.what}${more}`, `To mend it: ${first.repair} Or mend the file.`);
}

/** A quick look, so that a sound record is not gone over for its every finding. */
function mayBeBlocked(recording: Recording): boolean {
  const { timeS, depthM, unread } = recording;
  let blocked = isMissingDescent(timeS[0]!, depthM[0]!) || unread.some(({ of }) => of === 'gas');
  walkFaults(recording, (fault) => (blocked ||= BLOCKING.has(fault)));
  return blocked;
}

function settingsFor(first: Recording, given: Partial<Settings> | undefined): Settings {
  const settings = defaultSettings();
  if (first.water !== undefined) settings.water = first.water;
  if (first.altitudeM !== undefined) {
    settings.altitudeM = first.altitudeM;
    settings.start = { kind: 'adapted', altitudeM: first.altitudeM };
  }
  const [gas] = first.switches;
  settings.gas = gas ? { ...gas.gas } : { ...AIR };
  return { ...settings, ...given };
}

function stepsOf(
  recordings: readonly Recording[],
  profiles: readonly RecordProfile[],
  intervalsS: readonly number[],
  settings: Settings,
  closeness: Closeness,
  notes: string[],
) {
  const site = {
    barPerMetre: barPerMetre(settings.water),
    compartments: compartments(settings.model.variant, settings.model.first),
  };
  const steps: Step[] = [];
  const offsetS: number[] = [];
  let depthErrorM = 0;
  let tissueErrorBar = 0;
  let clockS = 0;
  let depthM = 0;
  let gas: Gas = settings.gas;
  const take = (step: Step) => {
    steps.push(step);
    if ('durationS' in step) clockS = tidy(clockS + step.durationS);
    if ('toM' in step) depthM = step.toM;
  };
  const breathe = (next: Gas) => {
    if (sameGas(gas, next)) return;
    gas = next;
    take({ kind: 'switch', gas: { ...next } });
  };
  const rest = (durationS: number) => {
    take({ kind: 'interval', durationS });
    gas = settings.gas;
  };
  /** Takes a dive whose record ends below the surface up, since a script ends there; s that takes. */
  const takeUp = ({ name }: Recording): number => {
    if (depthM === 0) return 0;
    const durationS = Math.max(1, Math.ceil((depthM * 60) / ADDED_ASCENT_M_MIN));
    notes.push(
      `“${name}” ends at ${sayDepth(depthM, 'metric')} (${sayDepth(depthM, 'imperial')}): an ascent to the surface was put after it.`,
    );
    take({ kind: 'ascend', toM: 0, durationS });
    return durationS;
  };
  recordings.forEach((_recording, number) => {
    const waitS = number === 0 ? 0 : intervalsS[number]! - takeUp(recordings[number - 1]!);
    if (number > 0 && waitS >= SHORTEST_S) rest(Math.min(LONGEST_S, tidy(waitS)));
    const { timeS, depthM: recordedM, switches, pins, surface } = profiles[number]!;
    // A dive whose gas is not told goes on with the first gas of the day.
    const breathed = switches.length > 0 ? switches : [{ timeS: 0, gas: settings.gas }];
    const simple = simplify({ timeS, depthM: recordedM, switches: breathed }, site, {
      closeness,
      keepUpTo: KEPT_EXACTLY,
      pins,
    });
    depthErrorM = Math.max(depthErrorM, simple.depthErrorM);
    tissueErrorBar = Math.max(tissueErrorBar, simple.tissueErrorBar);
    offsetS.push(tidy(clockS - timeS[0]!));
    let nextSwitch = 0;
    let recorded = settings.gas;
    for (let i = 1; i < simple.kept.length; i += 1) {
      const from = simple.kept[i - 1]!;
      const to = simple.kept[i]!;
      const durationS = tidy(timeS[to]! - timeS[from]!);
      if (surface.has(from)) {
        notes.push(
          `${printHours(durationS)} at the surface from ${printHours(timeS[from]!)} on is taken as a surface interval, breathing air.`,
        );
        rest(durationS);
        continue;
      }
      for (; nextSwitch < breathed.length && breathed[nextSwitch]!.timeS <= timeS[from]!; nextSwitch += 1)
        recorded = breathed[nextSwitch]!.gas;
      breathe(recorded);
      take(stepTo(depthM, recordedM[to]!, durationS));
    }
  });
  takeUp(recordings.at(-1)!);
  return { steps, offsetS, depthErrorM, tissueErrorBar };
}
