import { parseScript } from '../dive/script';
import { atDayClock } from '../dive/day-clock';
import { legsOf } from '../dive/legs';
import type { UnitSystem } from '../quantity/unit-system';
import { DEFAULT_RULES, type RuleSettings } from '../rules/all';
import { dayOf, type Day } from './day';
import type { Asked, Lever, Range, Try } from './lever';
import { LEVERS } from './levers/all';
import { breachesIn } from './breaches';
import { Owing, type Place } from './owing';
import { mostOwed, worked, type Target, type Trouble } from './trouble';
import { AVOIDED, sayLeft } from './words';
import { capital } from '../quantity/capital';
import { SAME_INSTANT_S } from '../dive/sample-instants';

/** A change that would have avoided it: worked out anew, rules and all, and no smaller one of its kind would have. */
export interface WayOut {
  readonly lever: string;
  readonly title: string;
  /** The dive changed, from 1. */
  readonly dive: number;
  readonly from: number;
  readonly to: number;
  readonly unit: string;
  /** What it costs the dive. */
  readonly cost: string;
  readonly text: string;
  /** The whole changed dive. */
  readonly script: string;
}

/** Why no change of a kind would have been enough, or could have been made. */
export interface NoWayOut {
  readonly lever: string;
  readonly title: string;
  readonly dive: number;
  readonly none: true;
  readonly text: string;
}

export interface Question {
  readonly target: Target;
  readonly system: UnitSystem;
  readonly rules?: RuleSettings | undefined;
}

/** Whether and where a script has what is asked after; undefined where it has not, or makes no sense. */
export function troubleOf(script: string, question: Question): Trouble | undefined {
  const day = dayOf(script, question.system);
  return day && firstTrouble(day, question.target, whole(question));
}

/**
 * What would have avoided it: each lever by itself, with everything else as it was. Of each the smallest change that is
 * enough, found by trying every sensible step from the smallest on, since a lever's effect may turn. Where several dives
 * of a day have it, the lever is pulled on each of them in turn. Empty where the script has no such trouble.
 */
export function waysOut(script: string, question: Question): (WayOut | NoWayOut)[] {
  const day = dayOf(script, question.system);
  if (!day) return [];
  const checks = whole(question);
  const trouble = firstTrouble(day, question.target, checks);
  if (!trouble) return [];
  return LEVERS.filter(({ avoids }) => avoids.includes(question.target)).map((lever) =>
    pulled(lever, day, trouble, question, checks),
  );
}

/** What the dive asked about is held against: a change may add no rise that a unit calls too fast. */
interface Checks {
  readonly rules: RuleSettings;
  readonly breaches: (day: Day) => readonly Trouble[];
  /** How many rises of a day are too fast, be the unit locked out by then or not: it says nothing while it is. */
  readonly tooFast: (day: Day) => number;
  /** Where it was in the change tried last: there it is looked for first in the next. */
  seen?: Place | undefined;
}

function whole({ rules = DEFAULT_RULES }: Question): Checks {
  const open = { ...rules, lockOut: { ...rules.lockOut, on: false } };
  const told = oncePerDay((day) => breachesIn(day.dive, rules));
  const all = oncePerDay((day) => breachesIn(day.dive, open).length);
  return { rules, breaches: told, tooFast: all };
}

function oncePerDay<T>(work: (day: Day) => T): (day: Day) => T {
  const known = new WeakMap<Day, { readonly is: T }>();
  return (day) => {
    let made = known.get(day);
    if (!made) known.set(day, (made = { is: work(day) }));
    return made.is;
  };
}

function firstTrouble(day: Day, target: Target, checks: Checks): Trouble | undefined {
  return target === 'slow-down' ? checks.breaches(day)[0] : new Owing(worked(day.dive)).first(target, true);
}

/** Pulls a lever on one dive after another, until the day is free of it. */
function pulled(lever: Lever, asked: Day, first: Trouble, question: Question, checks: Checks): WayOut | NoWayOut {
  const { id, title } = lever;
  const { target } = question;
  let day = asked;
  let trouble: Trouble | undefined = first;
  let firstRange: Range | undefined;
  let firstTry: Try | undefined;
  const doings: string[] = [];
  const costs: string[] = [];
  const dive = first.diveNumber + 1;
  while (trouble) {
    const found = onOneDive(lever, day, trouble, question, checks);
    const onDive = day.dives.length > 1 && !lever.wholeDay ? `on dive ${trouble.diveNumber + 1} ` : '';
    if ('none' in found) {
      const { none } = found;
      return {
        lever: id,
        title,
        dive,
        none: true,
        text: onDive ? capital(`${onDive}nothing: ${lowered(none)}`) : none,
      };
    }
    firstRange ??= found.range;
    firstTry ??= found.tried;
    doings.push(`${onDive}${lowered(found.tried.doing)}`);
    costs.push(found.tried.cost);
    day = found.day;
    trouble = found.next;
  }
  const { from, unit } = firstRange!;
  return {
    lever: id,
    title,
    dive,
    from,
    to: firstTry!.to,
    unit,
    cost: costs.join(', and '),
    text: capital(`${doings.join(' and ')} would have avoided ${AVOIDED[target]}.`),
    script: day.script,
  };
}

type Found = { readonly range: Range; readonly tried: Try; readonly day: Day; readonly next: Trouble | undefined };

function onOneDive(
  lever: Lever,
  day: Day,
  trouble: Trouble,
  question: Question,
  checks: Checks,
): Found | { readonly none: string } {
  const { target, system } = question;
  const dive = day.dives.find(({ number }) => number === trouble.diveNumber);
  if (!dive) return { none: 'It is there before the first dive begins.' };
  const asked: Asked = { day, dive, target, trouble, rules: checks.rules, breaches: () => checks.breaches(day) };
  const range = lever.range(asked);
  if ('none' in range) return range;
  const { changesFrom } = range;
  if (changesFrom && trouble.timeS < changesFrom.timeS - SAME_INSTANT_S) {
    const came = `${capital(AVOIDED[target])} came about ${atDayClock(legsOf(day.dive), trouble.timeS)}, ${changesFrom.called}`;
    return { none: `${came}: nothing of this kind would have been enough.` };
  }
  let last: Day | undefined;
  let fasterOnly = false;
  const changedBy = (tried: Try) => {
    const script = tried.script();
    return script === undefined ? undefined : dayOf(script, system);
  };
  const verdictOn = (changed: Day) => judged(changed, day, lever, trouble, question, checks);
  const isEnough = (tried: Try) => {
    const changed = changedBy(tried);
    return changed !== undefined && verdictOn(changed) !== 'still there';
  };
  for (const tried of range.ordered ? fromTheFirstEnough([...range.tries], isEnough) : range.tries) {
    const changed = changedBy(tried);
    if (!changed) continue;
    last = changed;
    const verdict = verdictOn(changed);
    if (verdict === 'too fast') fasterOnly = true;
    if (typeof verdict === 'string') continue;
    if (tried.but) return { none: tried.but };
    return { range, tried, day: changed, next: verdict.next };
  }
  const why = fasterOnly
    ? `a rise would have been too fast for the unit wherever ${AVOIDED[target]} was avoided`
    : last
      ? sayLeft(target, target === 'slow-down' ? { stopsMin: 0, ceilingM: 0 } : mostOwed(worked(last.dive)), system)
      : `${AVOIDED[target]} would have been there`;
  return { none: `${range.even}, ${why}.` };
}

/** Changes in order from the first that is enough on, found by halving; the last alone where none is. */
function fromTheFirstEnough(tries: readonly Try[], isEnough: (tried: Try) => boolean): readonly Try[] {
  let [tooLittle, enough] = [-1, tries.length - 1];
  if (enough < 0 || !isEnough(tries[enough]!)) return tries.slice(-1);
  while (enough - tooLittle > 1) {
    const middle = Math.floor((tooLittle + enough) / 2);
    if (isEnough(tries[middle]!)) enough = middle;
    else tooLittle = middle;
  }
  return tries.slice(enough);
}

/** Whether a changed day is free of it, as far as the dive that is changed and those before it. */
function judged(
  changed: Day,
  before: Day,
  { wholeDay, keepsRates }: Lever,
  { diveNumber }: Trouble,
  { target }: Question,
  checks: Checks,
): 'still there' | 'too fast' | { readonly next: Trouble | undefined } {
  const last = wholeDay ? Infinity : diveNumber;
  let next: Trouble | undefined;
  if (target === 'slow-down') [next] = checks.breaches(changed);
  else {
    const owing = new Owing(worked(changed.dive), wholeDay ? 0 : diveNumber);
    const seen = owing.seen(target, last, checks.seen);
    next = seen ? undefined : owing.first(target, false);
    const place = seen ?? (next && next.diveNumber <= last ? owing.placeOf(next.timeS) : undefined);
    if (place) {
      checks.seen = place;
      return 'still there';
    }
    // The next dive is told of at its instant.
    if (next) next = owing.first(target, true);
  }
  if (next && next.diveNumber <= last) return 'still there';
  const addsBreach = target !== 'slow-down' && !keepsRates && checks.tooFast(changed) > checks.tooFast(before);
  return addsBreach ? 'too fast' : { next };
}

function lowered(sentence: string): string {
  return sentence.charAt(0).toLowerCase() + sentence.slice(1);
}

/** The units a script is written in; metric where it makes no sense. */
export function systemOf(script: string): UnitSystem {
  const parsed = parseScript(script);
  return parsed.ok &&
    parsed.dive.lines.some(({ text, stands }) => stands.as === 'step' && /\d\s*(?:ft|feet|foot)\b/i.test(text))
    ? 'imperial'
    : 'metric';
}
