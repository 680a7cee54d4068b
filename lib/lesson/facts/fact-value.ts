import { sampleAt, sampleFromS } from '../../dive/timeline';
import { nearest } from '../../dive/script/nearest';
import { printClock } from '../../quantity/duration';
import { quoted } from '../../quantity/parsed';
import { EVENT_KINDS } from '../../rules/all';
import { COMPARTMENTS } from '../../tissue/coefficients';
import { namedMomentS, type DiveSpan } from './dive-spans';
import { amountOf, asDimension, stopAt, type AmountOutcome } from '../expression/evaluate';
import type { Expression, FactArgument, FactCall, WrittenMoment } from '../expression/expression';
import { factForm } from './fact-row';
import { FACT_NAMES, factNamed } from './facts';
import { NoValue, type Fact, type MomentFact, type ParameterKind } from './fact';
import type { Subject, View } from '../questions/subject';
import type { World } from '../expression/world';

type Named = Extract<Expression, { is: 'name' }> | FactCall;

/** The value of a fact, or of a value drawn for a question. */
export function factValue(named: Named, world: World): AmountOutcome {
  const own = world.values.get(named.name);
  if (own && named.is === 'name') return { is: 'amount', bare: false, ...own };
  const call: FactCall =
    named.is === 'fact'
      ? named
      : {
          ...named,
          is: 'fact',
          arguments: [],
          at: undefined,
          extreme: undefined,
          dive: undefined,
          script: undefined,
          unit: undefined,
        };
  if (call.name === 'drawn' && world.drawn) return drawnValue(call, world);
  const fact = factNamed(call.name);
  if (!fact) return unknown(call, world);
  const { values, event } = argumentsOf(fact, call, world);
  const view = viewOf(call, world);
  world.work?.begin(view, view.timeline.length * LOOKS.bySampleOfADive);
  const amount = (value: number): AmountOutcome => {
    world.noted?.({
      name: call.name,
      arguments: values,
      event,
      view,
      dive: call.dive,
      atS: call.at && momentS(call.at, call, view.subject, world),
      dimension: fact.dimension,
      value,
    });
    return { is: 'amount', value, dimension: fact.dimension, bare: false };
  };
  if (fact.of === 'moment') return amount(momentValue(fact, call, view, values, world));
  if (call.at || call.extreme) {
    stopAt(
      call.place,
      `${call.name} has one value for ${fact.of === 'dive' ? 'a whole dive' : 'a whole script'}, not for a moment.`,
      `Write ${call.name} without ${call.at ? 'at' : call.extreme}.`,
    );
  }
  world.work?.spend(fact.of === 'dive' ? view.timeline.length : LOOKS.toAPlan);
  return amount(
    fact.of === 'dive' ? fact.value(view, spanOf(call, view.subject), values, event) : fact.value(view, values),
  );
}

function unknown(call: FactCall, world: World): never {
  const names = [...FACT_NAMES, ...world.values.keys()];
  const close = nearest(call.name, names);
  return stopAt(
    call.place,
    `${quoted(call.name)} is not a fact that is known here.`,
    close ? `Did you mean ${close}?` : 'Take one from the table of facts.',
  );
}

/** Also for a moment that stands alone: where in which dive it is asked for. */
function spanOf({ dive }: Pick<FactCall, 'dive'>, { spans }: Subject): DiveSpan {
  const span = dive === undefined ? spans.at(-1) : spans[dive - 1];
  if (span) return span;
  throw new NoValue(
    spans.length === 0 ? 'This script does not leave the surface.' : `This script has no dive ${dive}.`,
  );
}

function viewOf({ script, unit, place }: FactCall, world: World): View {
  const subject = script === undefined ? world.subject : world.script(script);
  if (!subject) {
    const { scriptNames } = world;
    return stopAt(
      place,
      `There is no script called ${quoted(script!)}.`,
      scriptNames.length > 0
        ? `Write one of ${scriptNames.join(', ')}.`
        : 'Leave “of” out: there is only one dive here.',
    );
  }
  if (unit === undefined) return subject.truth;
  const view = subject.viewOf(unit);
  if (view) return view;
  return stopAt(
    place,
    `The script has no unit called ${quoted(unit)}.`,
    subject.units.length > 0
      ? `Write one of ${subject.units.map((name) => `"${name}"`).join(', ')}.`
      : `Add a line such as setup: ${unit} to the script.`,
  );
}

function momentValue(fact: MomentFact, call: FactCall, view: View, values: readonly number[], world: World): number {
  if (call.extreme) {
    if (call.at) stopAt(call.place, `${call.extreme} and “at” are said of one fact.`, 'Keep one of the two.');
    if (fact.dear)
      stopAt(
        call.place,
        `${call.name} is not worked out for every moment.`,
        `Ask for it at a moment, such as ${call.name} at leaving.`,
      );
    return extremeOf(fact, call, view, values, world);
  }
  if (!call.at)
    stopAt(
      call.place,
      `${call.name} changes over the dive, and no moment is given.`,
      `Write when, such as ${call.name} at leaving.`,
    );
  world.work?.spend(looksOf(fact));
  return fact.value(view, sampleAt(view.timeline, momentS(call.at, call, view.subject, world)), values);
}

function extremeOf(fact: MomentFact, call: FactCall, view: View, values: readonly number[], world: World): number {
  const span = spanOf(call, view.subject);
  const first = sampleAt(view.timeline, span.startS);
  const last = sampleAt(view.timeline, span.surfacingS ?? span.nextS);
  world.work?.spend((last - first + 1) * looksOf(fact));
  const better = call.extreme === 'highest' ? Math.max : Math.min;
  let best = fact.value(view, first, values);
  for (let sample = first + 1; sample <= last; sample += 1) best = better(best, fact.value(view, sample, values));
  return best;
}

/** About how many looks at a sample some work is worth. */
const LOOKS = { bySampleOfADive: 20, toAPlan: 25, toADearFact: 5000, toAnother: 2 } as const;

function looksOf({ dear, parameters }: MomentFact): number {
  if (dear) return LOOKS.toADearFact;
  return parameters?.includes('depth') ? LOOKS.toAPlan : LOOKS.toAnother;
}

/** When a moment is, s since the script began. */
export function momentS(moment: WrittenMoment, call: Pick<FactCall, 'dive'>, subject: Subject, world: World): number {
  // Seconds told as parts of a minute come back a hair short, and a moment is the sample it names.
  const timeS = Math.round(unboundedS(moment, call, subject, world) * 1e6) / 1e6;
  if (timeS < 0) throw new NoValue('This moment is before the script begins.');
  if (timeS > subject.endS + 1e-6)
    throw new NoValue(`The script ends at ${printClock(subject.endS)}, before ${printClock(timeS)}.`);
  return timeS;
}

function unboundedS(moment: WrittenMoment, call: Pick<FactCall, 'dive'>, subject: Subject, world: World): number {
  if (moment.is === 'time') return minutesOf(moment.minutes, world) * 60;
  if (moment.is === 'shifted')
    return unboundedS(moment.from, call, subject, world) + moment.direction * minutesOf(moment.minutes, world) * 60;
  if (moment.is === 'event') return eventS(moment, call, subject);
  if (moment.name === 'end') return subject.endS;
  const timeS = namedMomentS(spanOf(call, subject), moment.name, subject.endS);
  if (timeS === undefined) throw new NoValue('This dive does not come to the surface.');
  return timeS;
}

function minutesOf(minutes: Expression, world: World): number {
  return asDimension(amountOf(minutes, world), 'time', minutes.place);
}

/** Events are those of a unit that is set right; the moment is the sample at one or next after it, which shows what it has changed. */
function eventS(
  { name, place }: Extract<WrittenMoment, { is: 'event' }>,
  call: Pick<FactCall, 'dive'>,
  subject: Subject,
): number {
  knownEvent(name, place);
  const span = spanOf(call, subject);
  const found = subject.truth.watch().events.find((event) => event.kind === name && event.timeS >= span.startS);
  if (!found) throw new NoValue(`“${name}” does not happen on this dive.`);
  return sampleFromS(subject.truth.timeline, found.timeS);
}

function knownEvent(name: string, place: Expression['place']): void {
  if (Object.hasOwn(EVENT_KINDS, name)) return;
  const close = nearest(name, Object.keys(EVENT_KINDS));
  stopAt(
    place,
    `${quoted(name)} is not an event that is known here.`,
    close ? `Did you mean ${close}?` : `Write one of ${Object.keys(EVENT_KINDS).join(', ')}.`,
  );
}

function argumentsOf(fact: Fact, call: FactCall, world: World): { values: number[]; event: string } {
  const { parameters = [] } = fact;
  if (parameters.length !== call.arguments.length) {
    stopAt(
      call.place,
      `${call.name} takes ${parameters.length === 0 ? 'nothing' : parameters.length === 1 ? 'one value' : `${parameters.length} values`} in parentheses.`,
      `Write ${factForm(fact)}.`,
    );
  }
  let event = '';
  const values = call.arguments.flatMap((given, i) => {
    const kind = parameters[i]!;
    if (kind !== 'event') return [argumentValue(kind, given, world)];
    if (given.is !== 'event') stopAt(given.place, 'The name of an event is needed here.', `Write ${factForm(fact)}.`);
    knownEvent(given.name, given.place);
    event = given.name;
    return [];
  });
  return { values, event };
}

const DIMENSION_OF = {
  compartment: 'compartment',
  depth: 'depth',
  altitude: 'depth',
  pressure: 'pressure',
  cylinder: 'plain',
} as const;
const MOST_DEPTH_M = 350;

function argumentValue(kind: Exclude<ParameterKind, 'event'>, given: FactArgument, world: World): number {
  const expression: Expression = given.is === 'event' ? { is: 'name', name: given.name, place: given.place } : given;
  const value = asDimension(amountOf(expression, world), DIMENSION_OF[kind], given.place);
  if (kind === 'compartment' && (!Number.isInteger(value) || value < 1 || value > COMPARTMENTS)) {
    stopAt(given.place, 'This is not the number of a compartment.', `Write a whole number from 1 to ${COMPARTMENTS}.`);
  }
  if (kind === 'cylinder' && (!Number.isInteger(value) || value < 1))
    stopAt(given.place, 'This is not the number of a cylinder.', 'Write 1, 2 and so on.');
  if (kind === 'depth' && !(value >= 0 && value <= MOST_DEPTH_M))
    stopAt(given.place, 'This depth is out of reach.', `Write 0 m to ${MOST_DEPTH_M} m.`);
  if (kind === 'altitude' && !(value >= -450 && value <= 12_000))
    stopAt(given.place, 'This altitude is out of reach.', 'Write −450 m to 12000 m.');
  if (kind === 'pressure' && !(value > 0 && value < 100))
    stopAt(given.place, 'This pressure is out of reach.', 'Write a pressure such as 1.4 bar.');
  return value;
}

function drawnValue(call: FactCall, world: World): AmountOutcome {
  if (!call.at)
    stopAt(
      call.place,
      'What was drawn has a value at every moment, and no moment is given.',
      'Write when, such as drawn at arrival.',
    );
  const minutes =
    momentS(
      call.at,
      call,
      call.script === undefined ? world.subject : (world.script(call.script) ?? world.subject),
      world,
    ) / 60;
  const { dimension, at } = world.drawn!;
  return { is: 'amount', value: at(minutes), dimension, bare: false };
}
