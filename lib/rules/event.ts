import type { UnitSystem } from '../quantity/unit-system';

/** The figures a sentence about an event is made from: metres, seconds, m/min, fractions. */
export type EventNumbers = Readonly<Record<string, number>>;

/** A thing that can happen to a unit that watches a dive, and the sentence that tells it. */
export interface EventKind<Kind extends string = string, Numbers extends EventNumbers = EventNumbers> {
  readonly kind: Kind;
  /** The rule it comes from. */
  readonly rule: string;
  /** What it means, in one line. */
  readonly meaning: string;
  /** What happened, after the time and in the second person: "you rose 14 m in 20 s." */
  say(numbers: Numbers, system: UnitSystem): string;
}

export interface RuleEvent {
  readonly timeS: number;
  /** The time as its sentence begins with it: each dive of a day by its own clock. */
  readonly at: string;
  readonly kind: string;
  readonly rule: string;
  readonly numbers: EventNumbers;
  /** The whole sentence in metric units. */
  readonly text: string;
}

/** Declares a kind of event; `kind` keeps its own name as its type. */
export function eventKind<const Kind extends string, Numbers extends EventNumbers>(
  kind: EventKind<Kind, Numbers>,
): EventKind<Kind, Numbers> {
  return kind;
}

/** An event as a sentence: when it was, then what its kind says of it in the reader’s units. */
export function sentence<Numbers extends EventNumbers>(
  kind: EventKind<string, Numbers>,
  at: string,
  numbers: Numbers,
  system: UnitSystem,
): string {
  return `${at} ${kind.say(numbers, system)}`;
}
