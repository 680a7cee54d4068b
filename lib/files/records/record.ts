import type { Gas } from '../../physics/gas';
import type { Water } from '../../physics/water';

/** The most samples a file may hold, all its dives together. */
export const MAX_SAMPLES = 1_000_000;
export const MAX_DIVES = 1000;
/** The largest file that is read, bytes: a million waypoints of the open standard fit with room to spare. */
export const MAX_FILE_BYTES = 150_000_000;

/** What a recording unit may have said of its own at each sample. Seconds and metres; NaN where it said nothing. */
export const UNIT_CHANNELS = ['noStopS', 'ceilingM', 'stopDepthM', 'stopTimeS'] as const;
export type UnitChannel = (typeof UNIT_CHANNELS)[number];
export type UnitFigures = Partial<Readonly<Record<UnitChannel, Float64Array>>>;

export interface GasSwitch {
  readonly timeS: number;
  readonly gas: Gas;
}

/** What a file tells of the gas a dive begins with, in a sentence; with more than one possible gas a person has to say which. */
export interface FirstGas {
  readonly from: string;
  readonly possible: readonly Gas[];
}

/** A cell of the file that could not be understood. */
export interface Unread {
  readonly row: number;
  readonly text: string;
  readonly of: 'time' | 'depth' | 'gas';
}

/** One recorded dive as the file tells it, nothing mended. Sample i is at index i of every array. */
export interface Recording {
  readonly name: string;
  /** What `row` counts: lines of the file, or waypoints of this dive. */
  readonly rowsAre: 'row' | 'waypoint';
  readonly row: Uint32Array;
  /** Seconds since the beginning of this dive; NaN where it could not be read. */
  readonly timeS: Float64Array;
  /** NaN where it could not be read. */
  readonly depthM: Float64Array;
  /** Gases breathed, each from its time on. Empty where the file does not tell. */
  readonly switches: readonly GasSwitch[];
  /** Where the first gas is known from, where that needs saying, or between which the file leaves it open. */
  readonly firstGas?: FirstGas | undefined;
  readonly unit: UnitFigures;
  readonly temperatureC: Float64Array | undefined;
  /** Date and time of the beginning as the file writes it. */
  readonly startedAt: string | undefined;
  /** Seconds at which this dive begins on a clock that the dives of the file share. */
  readonly clockS: number | undefined;
  /** Time at the surface before this dive as the file tells it, s; Infinity for a diver with no gas left over. */
  readonly intervalBeforeS: number | undefined;
  readonly altitudeM: number | undefined;
  readonly water: Water | undefined;
  readonly unread: readonly Unread[];
}

/** What a file came to: its dives, and what a reader should know of how it was read. */
export interface FileRead {
  readonly ok: true;
  readonly recordings: readonly Recording[];
  /** Plain sentences: what was assumed, left aside or not understood. */
  readonly notes: readonly string[];
}

/** A file that could not be read, with what had been understood of it before. */
export interface FileRefusal {
  readonly ok: false;
  readonly what: string;
  readonly mend: string;
  readonly rescued: readonly Recording[];
}

export type FileResult = FileRead | FileRefusal;

/** How a long piece of reading tells how far it is, and is stopped. */
export interface Hooks {
  /** Characters read so far. */
  onProgress?(characters: number): void;
  /** Asked between pieces; once it is true nothing more is read. */
  cancelled?(): boolean;
}

/** A recording of some of the samples, in the order of the indices given. */
export function pickSamples(recording: Recording, indices: ArrayLike<number>): Recording {
  const of = (from: Float64Array) => Float64Array.from(indices, (i) => from[i]!);
  const unit: Partial<Record<UnitChannel, Float64Array>> = {};
  for (const channel of UNIT_CHANNELS) {
    const figures = recording.unit[channel];
    if (figures) unit[channel] = of(figures);
  }
  return {
    ...recording,
    row: Uint32Array.from(indices, (i) => recording.row[i]!),
    timeS: of(recording.timeS),
    depthM: of(recording.depthM),
    temperatureC: recording.temperatureC && of(recording.temperatureC),
    unit,
  };
}
