import type { Settings } from '@/lib/dive/dive';
import type { Finding, FindingKind } from '@/lib/files/records/check-record';
import type { Mapping } from '@/lib/files/csv/csv-mapping';
import type { Preview } from '@/lib/files/csv/preview-rows';
import type { Doubt, Explanation, SearchProgress } from '@/lib/files/settings/explain-settings';
import type { GuessedColumn, Question } from '@/lib/files/csv/guess-columns';
import type { Trace } from '@/lib/files/records/thin-samples';
import type { SideBySide } from '@/lib/files/settings/unit-and-model';
import type { Series } from '@/lib/files/records/dive-log';
import type { FirstGas, UnitChannel } from '@/lib/files/records/record';
import type { Gas } from '@/lib/physics/gas';
import type { Water } from '@/lib/physics/water';

/** What is said of a file that cannot be used as it is. */
export interface Trouble {
  readonly what: string;
  readonly mend: string;
}

/** What a file looks like before it is read: its kind and, of a CSV file, how its columns were understood. */
export type Look =
  | { readonly ok: true; readonly kind: 'uddf'; readonly notes: readonly string[] }
  | {
      readonly ok: true;
      readonly kind: 'csv';
      readonly notes: readonly string[];
      readonly columns: readonly GuessedColumn[];
      readonly mapping: Mapping;
      readonly questions: readonly Question[];
    }
  | ({ readonly ok: false } & Trouble);

/** A dive of the file, as it was read. */
export interface DiveRead {
  readonly name: string;
  /** Date and time of day as the file writes them. */
  readonly startedAt: string | undefined;
  readonly samples: number;
  readonly endS: number;
  readonly deepestM: number;
  /** Every gas breathed, in the order of the dive; empty where the file does not tell. */
  readonly gases: readonly Gas[];
  readonly firstGas: FirstGas | undefined;
  readonly channels: readonly UnitChannel[];
  readonly findings: readonly Finding[];
  readonly counts: Partial<Readonly<Record<FindingKind, number>>>;
}

export interface FileBrought {
  readonly dives: readonly DiveRead[];
  readonly series: readonly Series[];
  /** What to bring unless a person says otherwise. */
  readonly likely: readonly number[];
  readonly notes: readonly string[];
  /** What the file tells of the site of its first dive. */
  readonly told: {
    readonly water: Water | undefined;
    readonly altitudeM: number | undefined;
  };
  /** Why no more of it was read, where it broke off. */
  readonly brokeOff: Trouble | undefined;
}

export type ReadOutcome = ({ readonly ok: true } & FileBrought) | ({ readonly ok: false } & Trouble);

/** What a person has decided about a file that was read. */
export interface Decisions {
  /** Which of its dives to bring, by their places. */
  readonly chosen: readonly number[];
  readonly repair: readonly FindingKind[];
  /** Time at the surface before each mended dive, s, where it was said. */
  readonly intervalsS: readonly (number | undefined)[];
  readonly settings: Partial<Settings>;
}

/** A dive after its repair: what is drawn and exported. */
export interface MendedDive {
  readonly name: string;
  readonly samples: number;
  readonly channels: readonly UnitChannel[];
  /** As the file tells or the person said; undefined where nobody has. */
  readonly intervalS: number | undefined;
  readonly recorded: Trace;
  /** Of which dive of the file it is, by its place there, and from which row on: one whose time began again is mended into several. */
  readonly place: number;
  readonly fromRow: number;
  /** How much later its samples are than the file wrote them, s, where a descent was put in before them. */
  readonly laterS: number;
}

/** One dive of the desk made of the records, and how close it is to them. */
export interface Made {
  readonly script: string;
  readonly steps: number;
  readonly notes: readonly string[];
  readonly depthErrorM: number;
  readonly tissueErrorBar: number;
  /** The simplified profile of each mended dive. */
  readonly lines: readonly Trace[];
  /** The unit's figures beside the model's, for each dive; empty where the record holds none. */
  readonly beside: readonly (readonly SideBySide[])[];
  /** How far off the model is under these settings, in words; undefined without figures of the unit's own. */
  readonly offBy: string | undefined;
}

export interface MakeOutcome {
  readonly dives: readonly MendedDive[];
  readonly repaired: Partial<Readonly<Record<FindingKind, number>>>;
  readonly made: ({ readonly ok: true } & Made) | ({ readonly ok: false } & Trouble);
}

export interface Explained extends Explanation {
  /** The unit beside the model under the best settings, for each dive. */
  readonly beside: readonly (readonly SideBySide[])[];
}

export type ExplainOutcome = ({ readonly ok: true } & Explained) | ({ readonly ok: false } & Trouble);

/** A file on its way in. One at a time, in another thread where there is one. */
export interface Session {
  look(file: Blob): Promise<Look>;
  /** The first rows of a CSV file as a mapping has them read. */
  preview(mapping: Mapping): Promise<Preview>;
  /** @param onProgress told the characters read */
  read(mapping: Mapping | undefined, onProgress: (characters: number) => void): Promise<ReadOutcome>;
  make(decisions: Decisions): Promise<MakeOutcome>;
  explain(doubt: Doubt, onProgress: (progress: SearchProgress) => void): Promise<ExplainOutcome>;
  /** The mended dives as a file. */
  write(kind: 'uddf' | 'csv'): Promise<string>;
  /** Stops what is under way. */
  cancel(): Promise<void>;
}
