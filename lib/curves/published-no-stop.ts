import overlays from '../../content/curves/no-stop-overlays.json';
import table1986 from '../../content/published/no-stop-1986.json';
import navy from '../../content/published/no-stop-us-navy.json';
import { BAR_PER_FSW, barPerMetre } from '../physics/water';

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

const metresPerFsw = BAR_PER_FSW / barPerMetre('reference');
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
