import overlays from '../../content/curves/no-stop-overlays.json';
import table1986 from '../../content/published/no-stop-1986.json';
import navy from '../../content/published/no-stop-us-navy.json';
import water from '../../content/published/water.json';
import { barPerMetre } from '../physics/water';
import { AIR } from '../physics/gas';
import type { Settings } from '../dive/dive';
import { defaultSettings } from '../dive/default-settings';
import { curveSite, rested } from './curve-site';
import { noStopCurve } from './no-stop-curve';

/** A row of a published table, at its depth in metres of the reference water (10 m to the bar). */
export interface PublishedRow {
  readonly depthM: number;
  readonly minutes: number;
  /** The depth as the table prints it. */
  readonly printed: string;
  /** How the row came to this project: read in a source, or from memory. */
  readonly obtained: string;
}

/** A published table of no-stop times on air, to lay over a curve. */
export interface PublishedTable {
  readonly id: string;
  readonly name: string;
  readonly source: string;
  /** What the data file warns of. */
  readonly note: string;
  readonly altitudeM: number;
  readonly descentMMin: number;
  readonly rows: readonly PublishedRow[];
}

const PA_PER_BAR = 1e5;
const metresPerFsw = water.fsw.pa / PA_PER_BAR / barPerMetre('reference');
const fromFsw = ({
  depthFsw,
  minutes,
  obtained,
}: {
  depthFsw: number;
  minutes: number;
  obtained: string;
}): PublishedRow => ({
  depthM: depthFsw * metresPerFsw,
  minutes,
  printed: `${depthFsw} fsw`,
  obtained,
});

const ROWS: Record<string, { readonly source: string; readonly note: string; readonly rows: readonly PublishedRow[] }> =
  {
    'navy-revision-7': { source: navy.source, note: navy.note, rows: navy.revision7.map(fromFsw) },
    'navy-revision-4': { source: navy.source, note: navy.note, rows: navy.revision4.map(fromFsw) },
    'table-1986': {
      source: table1986.source,
      note: table1986.note,
      rows: table1986.values.map((row) => ({ ...row, printed: `${row.depthM} m` })),
    },
  };

export const PUBLISHED_TABLES: readonly PublishedTable[] = overlays.map(({ id, name, altitudeM, descentMMin }) => ({
  id,
  name,
  altitudeM,
  descentMMin: descentMMin.value,
  ...ROWS[id]!,
}));

/** One step of the way from the model's time to a table's. */
export interface DifferenceStep {
  readonly id: 'model' | 'descent' | 'whole-minutes' | 'remainder';
  /** The time as it stands after this step, min. */
  readonly minutes: number;
  /** How much this step changed it, min; 0 for the first. */
  readonly changeMin: number;
  readonly why: readonly string[];
}

/**
 * Why a table's row differs from the model's time, step by step: the model's own time on air at the row's depth and the
 * table's altitude, counted from arrival; the way down counted in; cut to whole minutes; and the rest, which is
 * another model. `gf` is the gradient factor at the surface; the model's settings default to ZH-L16C with 1b.
 */
export function whyTheyDiffer(
  table: PublishedTable,
  row: PublishedRow,
  gf: number,
  model: Settings['model'] = defaultSettings().model,
): DifferenceStep[] {
  const overlay = overlays.find(({ id }) => id === table.id)!;
  const settings: Settings = {
    ...defaultSettings(),
    model,
    altitudeM: table.altitudeM,
    start: { kind: 'adapted', altitudeM: table.altitudeM },
  };
  const conditions = { site: curveSite(settings), tissues: rested(settings), gas: AIR, gf };
  const own = noStopCurve(conditions, [row.depthM]).minutes[0]!;
  const fromSurface = noStopCurve({ ...conditions, descentMMin: table.descentMMin }, [row.depthM]).minutes[0]!;
  const whole = Math.floor(fromSurface);
  const steps = [
    { id: 'model' as const, minutes: own, why: ['The model’s own time, counted from arriving at depth.'] },
    { id: 'descent' as const, minutes: fromSurface, why: [overlay.descentMMin.text] },
    { id: 'whole-minutes' as const, minutes: whole, why: [overlay.wholeMinutes] },
    { id: 'remainder' as const, minutes: row.minutes, why: overlay.remainder },
  ];
  return steps.map((step, i) => ({
    ...step,
    changeMin: i === 0 || step.minutes === steps[i - 1]!.minutes ? 0 : step.minutes - steps[i - 1]!.minutes,
  }));
}
