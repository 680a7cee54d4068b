import { accepted, type Parsed, type Refusal } from '../../quantity/parsed';
import type { Settings } from '../dive';

/** Puts a value into the settings, which hold everything from the entries above it in the table; or refuses. */
export type Apply = (settings: Settings) => Refusal | undefined;

/** One setting of a script. */
export interface Setting {
  /** The words it is written with. */
  readonly name: string;
  /** Other words understood for it. */
  readonly also: readonly string[];
  /** A sentence or two for the reference page. */
  readonly help: string;
  /** What it means when left out: its value in words, or a sentence. */
  readonly unless: string;
  /** Values as examples; each of them reads. */
  readonly examples: readonly string[];
  /** Every value there is, for completion, when they can be listed. */
  readonly choices?: readonly string[];
  /** May be written on more than one line. */
  readonly repeats?: true;
  /** Only one setting with the same topic may be written. */
  readonly topic?: string;
  /** What to write during the dive instead, when there is such a thing. */
  readonly inDive?: string;
  /** Written out even when it has its usual value. */
  readonly always?: true;
  read(text: string): Parsed<Apply>;
  /** Its value in words that read back as exactly the same, a text for each line of it; nothing when it has none. */
  write(settings: Settings): string | readonly string[] | undefined;
}

/** A value read, to be put in its place in the settings; each settings get a copy of their own. */
export function put<T>(read: Parsed<T>, place: (settings: Settings, value: T) => void): Parsed<Apply> {
  if (!read.ok) return read;
  return accepted((settings: Settings) => {
    place(settings, typeof read.value === 'object' ? structuredClone(read.value) : read.value);
    return undefined;
  });
}
