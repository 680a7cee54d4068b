import type * as z from 'zod';
import { accepted, type Parsed, type Refusal } from '../../../quantity/parsed';
import type { Checker } from '../../checker';
import type { Settings } from '../../dive';

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

interface AnyField extends Pick<
  Setting,
  'name' | 'also' | 'help' | 'unless' | 'examples' | 'choices' | 'inDive' | 'always'
> {
  readonly schema: (checker: Checker) => z.ZodType;
  readonly usual: unknown;
  read(text: string): Parsed<unknown>;
  write(value: never): string;
}

/**
 * A setting that is one field of the settings and depends on no other. The schema and the default of the settings are
 * made from these, and so are the dives that the round trip of text and dive is tried on.
 */
interface Field<Schema extends z.ZodType> extends AnyField {
  /** Made when it is asked for: a screen that reads scripts and no data needn't fetch the checker. */
  readonly schema: (checker: Checker) => Schema;
  /** What it is when left out; undefined for a field that is then absent. */
  readonly usual: z.infer<Schema>;
  read(text: string): Parsed<z.infer<Schema>>;
  /** In words that read back as exactly the same; never asked of an absent field. */
  write(value: Exclude<z.infer<Schema>, undefined>): string;
}

/** A field as an entry of the table, its types held to its schema. */
export function field<Schema extends z.ZodType>(entry: Field<Schema>): Field<Schema> {
  return entry;
}

type Group = Readonly<Record<string, AnyField>>;
type Schemas<G extends Group> = { -readonly [Key in keyof G]: ReturnType<G[Key]['schema']> };

/** Every field as a setting of the script, in the order of the table; the fields of a group lie in an object of its name. */
export function settingsOf(table: Readonly<Record<string, AnyField | Group>>): Setting[] {
  return Object.entries(table).flatMap(([key, entry]) =>
    isField(entry)
      ? [settingAt(entry, key)]
      : Object.entries(entry).map(([inner, one]) => settingAt(one, inner, key as keyof Settings)),
  );
}

function isField(entry: AnyField | Group): entry is AnyField {
  return typeof entry['name'] === 'string';
}

function settingAt(entry: AnyField, key: string, group?: keyof Settings): Setting {
  const holder = (settings: Settings) => (group ? settings[group] : settings) as Record<string, unknown>;
  return {
    ...entry,
    read: (text) =>
      put(entry.read(text), (settings, value) => {
        if (value !== undefined) holder(settings)[key] = value;
      }),
    write(settings) {
      const value = holder(settings)[key];
      return value === undefined ? undefined : entry.write(value as never);
    },
  };
}

/** The schemas of some fields by their keys, to make the schema of an object of. */
export function schemasOf<G extends Group>(group: G, checker: Checker): Schemas<G> {
  return Object.fromEntries(Object.entries(group).map(([key, { schema }]) => [key, schema(checker)])) as Schemas<G>;
}

/** What some fields are when left out, by their keys and made new each time; those that are then absent are left out. */
export function usualOf<G extends Group>(group: G): z.infer<z.ZodObject<Schemas<G>>> {
  const present = Object.entries(group).filter(([, { usual }]) => usual !== undefined);
  return structuredClone(Object.fromEntries(present.map(([key, { usual }]) => [key, usual]))) as never;
}
