import type { UnitSystem } from '../quantity/unit-system';
import { MEASURES, partsAs, printAs, type MeasureId } from './measures';

/** Who says so: nobody's alarm, the model's own stop, or a rule laid on top of the model. */
export type Tone = 'plain' | 'stop' | 'rule';

/** A reading as a person meets it, whichever surface shows it. */
export interface Saying {
  readonly name: string;
  /** Parted from its unit for a tile: `12`, `>99`, `none`. */
  readonly value: string;
  /** Empty beside a word and where there is none. */
  readonly unit: string;
  /** Whole, for a cell or a line: `12 min`, `2 min at 6 m`. */
  readonly text: string;
  /** A few words that belong under it. */
  readonly note: string;
  /** The compartment (1–16) that sets it; 0 where none does. */
  readonly leader: number;
  readonly tone: Tone;
}

/** How one reading is taken from a moment. Its rounding is its measure's. */
export interface Reading<Moment> {
  /** Null for a reading in words alone. */
  readonly measure: MeasureId | null;
  /** In place of the measure's own name. */
  readonly name?: string;
  /** Null, or left out, where there is none to show. */
  figure?(moment: Moment): number | null;
  /** Words in place of the figure, if the moment asks for them. */
  words?(moment: Moment): string | undefined;
  /** The whole text, where it says more than the figure. */
  text?(moment: Moment, system: UnitSystem): string | undefined;
  note?(moment: Moment, system: UnitSystem): string;
  leader?(moment: Moment): number;
  tone?(moment: Moment): Tone;
}

/** What a table says where a unit shows nothing. */
export const NOT_SHOWN = 'not shown';

/** Says one reading of a moment. */
function say<Moment>(reading: Reading<Moment>, moment: Moment, system: UnitSystem): Saying {
  const { measure } = reading;
  const figure = reading.figure?.(moment) ?? null;
  const none = measure === null || figure === null;
  const words = reading.words?.(moment) ?? (none ? NOT_SHOWN : undefined);
  const parted = words === undefined && !none;
  const [value, unit] = parted ? partsAs(measure, figure, system) : [words!, ''];
  return {
    name: reading.name ?? (measure === null ? '' : MEASURES[measure].name),
    value,
    unit,
    text: reading.text?.(moment, system) ?? (parted ? printAs(measure, figure, system) : value),
    note: reading.note?.(moment, system) ?? '',
    leader: reading.leader?.(moment) ?? 0,
    tone: reading.tone?.(moment) ?? 'plain',
  };
}

/** Says all readings of a table, each by its id. */
export function sayAll<Id extends string, Moment>(
  table: Readonly<Record<Id, Reading<Moment>>>,
  moment: Moment,
  system: UnitSystem,
): Readonly<Record<Id, Saying>> {
  const said = {} as Record<Id, Saying>;
  for (const id in table) said[id] = say(table[id], moment, system);
  return said;
}
