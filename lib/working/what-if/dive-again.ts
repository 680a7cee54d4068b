import { figuresOf, type Figures } from '../../ascent/figures';
import type { Dive } from '../../dive/dive';
import { legsOf } from '../../dive/legs';
import type { Sampling } from '../../dive/sampling';
import { computeTimeline, sampleAt, type Timeline } from '../../dive/timeline';
import { accepted, refused, type Parsed } from '../../quantity/parsed';
import { watchDive, type Watch } from '../../rules/watch';
import { REMARKS } from '../remarks';
import type { SymbolName, Working, WorkingValue } from '../working';
import { IN_THE_WORKING, knobOf } from './knob-of';
import type { Asked, Changed } from './knob';

/** Where the changed dive is sampled besides its changes and the moment asked for, s: its figures don't depend on it. */
const SPARSE_S = 600;

/** How a working of the model's is made again, of the changed dive. */
export interface ModelAgain {
  readonly of: 'model';
  working(timeline: Timeline, figures: Figures, sample: number): Working;
}

/** The same of a unit, which watches the dive again, sampled so finely. */
interface UnitAgain {
  readonly of: 'unit';
  working(watch: Watch, sample: number): Working | null;
  sampling(dive: Dive): Sampling;
}

type MadeAgain = ModelAgain | UnitAgain;

/** What may be asked of the numbers of one working. */
export interface DiveAgain {
  /** Its numbers for changing, each with what it may be: those that a step, a setting or a rule says, and those that the working says in full. */
  readonly changeable: ReadonlyMap<SymbolName, WorkingValue>;
  /** Its other numbers that are no results, each with why it is not for changing. */
  readonly fixed: ReadonlyMap<SymbolName, { readonly value: WorkingValue; readonly why: string }>;
  /**
   * The working of the dive that has another number there, at the same moment of the same leg; undefined where the
   * working itself is all that says the number.
   */
  with(symbol: SymbolName, value: number): Parsed<Working> | undefined;
}

/**
 * The numbers of a working as the dive behind it has them: what is a step's is changed in the script, the stay with its
 * depth, what is a setting's in the settings, and the whole dive is worked out anew, its unit with it.
 */
export function diveAgain(asked: Asked, again: MadeAgain): DiveAgain {
  const changeable = new Map<SymbolName, WorkingValue>();
  const fixed = new Map<SymbolName, { value: WorkingValue; why: string }>();
  for (const [symbol, value] of givenValues(asked.working)) {
    const knob = knobOf(asked, symbol, value);
    if (typeof knob === 'string' && knob !== IN_THE_WORKING) fixed.set(symbol, { value, why: knob });
    else {
      const within = typeof knob === 'string' ? value.within : (knob.within ?? value.within);
      if (within) changeable.set(symbol, { ...value, changeable: true, within });
    }
  }
  return {
    changeable,
    fixed,
    with(symbol, value) {
      const known = changeable.get(symbol);
      const knob = known && knobOf(asked, symbol, known);
      if (!knob || typeof knob === 'string') return undefined;
      const turned = knob.turn(value);
      return turned.ok ? workedAgain(asked, again, turned.value) : turned;
    },
  };
}

/** Every value of a working that no step of it yields, by symbol. */
function givenValues(working: Working): ReadonlyMap<SymbolName, WorkingValue> {
  const given = new Map<SymbolName, WorkingValue>();
  for (const { values } of working.steps)
    for (const [symbol, value] of Object.entries(values)) if (!value.from.startsWith('step:')) given.set(symbol, value);
  return given;
}

function workedAgain(asked: Asked, again: MadeAgain, turned: Partial<Changed>): Parsed<Working> {
  const { timeline, sample } = asked;
  const current = timeline.leg[sample]!;
  const { dive, ...changed }: Changed = {
    dive: asked.dive,
    intoLegS: timeline.timeS[sample]! - timeline.legs[current]!.startS,
    ...turned,
  };
  const { legs } = legsOf(dive);
  const leg = legs[current];
  if (!leg || legs.length !== timeline.legs.length)
    return refused('Then the dive would have other steps.', 'Write a number nearer to the one there is.');
  const nowS = Math.min(leg.endS, leg.startS + changed.intoLegS);
  const moments = { alsoEveryS: nowS > 0 ? [nowS] : [], compartments: changed.compartments };
  const working = madeAt(again);
  if (!working) return refused('Then this is not shown at that moment.', 'Write a number nearer to the one there is.');
  return accepted({ ...working, answer: { ...working.answer, text: REMARKS.whatIfDive } });

  function madeAt(how: MadeAgain): Working | null {
    if (how.of === 'model') {
      const then = computeTimeline(dive, SPARSE_S, moments);
      return how.working(then, figuresOf(then, dive.settings), sampleAt(then, nowS + JUST_AFTER_S));
    }
    const { setup, rules } = asked.watch!;
    const { everyS, intervalEveryS } = how.sampling(dive);
    const options = { ...moments, intervalEveryS };
    const then = watchDive(dive, changed.setup ?? setup, changed.rules ?? rules, everyS, options);
    return how.working(then, sampleAt(then.timeline, nowS + JUST_AFTER_S));
  }
}

/** A moment that rounding puts just before a sample is that sample's, s. */
const JUST_AFTER_S = 1e-7;
