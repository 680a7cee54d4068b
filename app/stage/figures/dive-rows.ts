import { figuresAt } from '@/lib/ascent/figures';
import { printDayClock } from '@/lib/dive/day-clock';
import { sampleAt, sampleFromS } from '@/lib/dive/timeline';
import type { UnitSystem } from '@/lib/quantity/unit-system';
import type { Watch } from '@/lib/rules/watch';
import { modelSayings } from '@/lib/sayings/model-readings';
import { tellsUnder } from '@/lib/sayings/where';
import { leadingCompartment } from '../../pictures/leading';
import type { Scene } from '../../pictures/scene';
import { tableSamples } from '../../pictures/table-samples';
import { SOMETHING_HAPPENS } from '../moments';
import { logEntriesOf } from '../units/log-entries';

/** One moment of the dive as the table behind its picture tells it. */
export interface DiveRow {
  readonly sample: number;
  /** As printed. */
  readonly time: string;
  readonly depth: string;
  readonly ceiling: string;
  readonly noStop: string;
  readonly stop: string;
  /** 1–16, or that it is covered. */
  readonly leader: number | string;
  /** What the unit tells then, empty where it tells nothing. */
  readonly events: string;
}

/** What the readings say at one sample, and who leads. */
export function diveRow(scene: Scene, sample: number, units: UnitSystem, events = ''): DiveRow {
  const { timeline, figures } = scene;
  const said = modelSayings({ timeline, sample, now: figuresAt(timeline, figures, sample) }, units);
  return {
    sample,
    time: printDayClock(timeline, timeline.timeS[sample]!),
    depth: said.depth.text,
    ceiling: said.ceiling.text,
    noStop: said['no-stop'].text,
    stop: said['required-stop'].text,
    leader: leadingCompartment(scene, sample),
    events,
  };
}

/** The dive from its start to its end: where it turns, every so often between, and wherever the unit tells something. */
export function diveRows(scene: Scene, watch: Watch, units: UnitSystem): readonly DiveRow[] {
  const { timeline } = scene;
  const told = new Map<number, string[]>();
  for (const { timeS, text } of logEntriesOf(scene, watch, units)) {
    const sample = sampleAt(timeline, sampleFromS(timeline, timeS));
    told.set(sample, [...(told.get(sample) ?? []), text]);
  }
  const samples = [...new Set([...tableSamples(timeline), ...told.keys()])].sort((one, other) => one - other);
  return samples.map((sample) => diveRow(scene, sample, units, told.get(sample)?.join(' ')));
}

/** The rows with the moment of the cursor among them, which is one of its own where there is none. */
export function withNow(rows: readonly DiveRow[], now: () => DiveRow, sample: number): readonly DiveRow[] {
  const place = rows.findIndex((row) => row.sample >= sample);
  if (rows[place]?.sample === sample) return rows;
  return place < 0 ? [...rows, now()] : rows.toSpliced(place, 0, now());
}

/** What stands in the place of a figure that is covered. */
export const COVERED = 'covered';

/** A row as it may be read while some readings are covered: without them, and what they could be told from. */
export function underCover(row: DiveRow, covered: readonly string[]): DiveRow {
  if (covered.length === 0) return row;
  const tells = tellsUnder(covered);
  return {
    ...row,
    ...(covered.includes('depth') && { depth: COVERED }),
    ...(!tells.standing && { ceiling: COVERED, noStop: COVERED, stop: COVERED }),
    ...(!tells.leader && { leader: COVERED }),
    events: row.events && SOMETHING_HAPPENS,
  };
}
