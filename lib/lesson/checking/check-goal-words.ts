import { evaluateAmount, evaluateComparison } from '../expression/evaluate';
import type { ComparisonSign } from '../expression/expression';
import { parseExpression } from '../expression/parse-expression';
import type { Amount, World } from '../expression/world';
import type { StepOf } from '../step';
import type { Checker } from './checker';

/* A goal is written twice, in words for whoever dives it and as an expression: one has to ask for what the other says. */

type Path = readonly PropertyKey[];

/** One end that a goal or its words set to something. */
interface Bound {
  readonly side: 'least' | 'most';
  readonly amount: Amount;
  readonly written: string;
}

const AMOUNT = String.raw`\d+(?:\.\d+)? ?(?:m\/min|ft\/min|min|ft|m|h|s|bar|%|g\/L|L)(?![\w/])`;
const BEFORE = new RegExp(
  `(at least|no less than|not less than|at most|no more than|not more than|never more than|no faster than|more than|less than|within|up to|never passes) (${AMOUNT})`,
  'gi',
);
const AFTER = new RegExp(`(${AMOUNT}) or (more|deeper|longer|less|shallower|shorter)\\b`, 'gi');
/** What is to be kept is to be had at least. */
const KEPT = new RegExp(`\\b(?:keep(?: the dive at)?|gets to) (${AMOUNT})(?: (?:and|with) (${AMOUNT}))?`, 'gi');
const AT_LEAST = /^(?:at least|no less than|not less than|more than|more|deeper|longer)$/i;
/** A goal is in round feet where its words are, so that the two differ by less than this part. */
const SAME_PART = 0.02;

/** What is asked for in words and in a goal, an amount or none. */
const SUBJECTS: readonly (readonly [what: string, words: RegExp, goal: RegExp])[] = [
  ['a ceiling or a required stop', /\bceiling|required stop/i, /ceiling|requiredStop/i],
  ['a safety stop', /safety stop|between \d+ (?:m|ft) and \d+/i, /safety-?stop|minutesBetween/i],
  ['how fast to come up', /\bclimb|no faster than|slow down|\b(?:m|ft)\/min/i, /fastestAscent|slow-down/i],
];

/** The words of a `try` against its goal: each end told is asked for, and each amount asked for is told. */
export function checkGoalWords({ text, goal }: StepOf<'try'>, path: Path, world: World, checker: Checker): void {
  const words = text
    .replace(/\{\{([^{}|]*)(?:\|[^{}]*)?\}\}/g, (_, expression: string) => expression.trim())
    .replace(/\]\([^)]*\)|[*[]/g, '')
    .replaceAll(/\s+/g, ' ');
  const asked = boundsOfGoal(goal, world);
  for (const told of boundsOfWords(words, world))
    if (!asked.some((one) => one.side === told.side && alike(one.amount, told.amount)))
      checker.fault(
        [...path, 'text'],
        `“${told.written}” stands in the text, and the goal does not ask for it.`,
        'Let the goal say what the text says: >= for at least, <= for at most.',
      );
  const amounts = amountsIn(words, world);
  for (const { amount, written } of asked)
    if (!['plain', 'compartment'].includes(amount.dimension) && amount.value !== 0)
      if (!amounts.some((told) => alike(told, amount)))
        checker.fault(
          [...path, 'goal'],
          `The goal asks for ${written}, and the text does not say so.`,
          'Say it in the text, or take it out of the goal.',
        );
  for (const [what, inWords, inGoal] of SUBJECTS) {
    const told = inWords.test(words);
    if (told !== inGoal.test(goal))
      checker.fault(
        [...path, told ? 'goal' : 'text'],
        told
          ? `The text speaks of ${what}, and the goal does not.`
          : `The goal asks about ${what}, and the text does not say so.`,
        'Ask for it in both, or in neither.',
      );
  }
}

function boundsOfWords(words: string, world: World): Bound[] {
  const bound = (how: string, amount: string, written: string): Bound[] => {
    const [value] = amountsIn(amount, world);
    if (!value) return [];
    return [{ side: AT_LEAST.test(how) ? 'least' : 'most', amount: value, written }];
  };
  return [
    ...[...words.matchAll(BEFORE)].flatMap(([written, how = '', amount = '']) => bound(how, amount, written)),
    ...[...words.matchAll(KEPT)].flatMap(([written, ...amounts]) =>
      amounts.flatMap((amount = '') => bound('at least', amount, written)),
    ),
    ...[...words.matchAll(AFTER)].flatMap(([written, amount = '', how = '']) => bound(how, amount, written)),
  ];
}

const IN_WORDS: readonly (readonly [RegExp, string])[] = [
  [/three quarters/i, '75%'],
  [/\bone min|a minute/i, '1 min'],
  [/\btwo min/i, '2 min'],
  [/\bthree min/i, '3 min'],
  [/\bfive min/i, '5 min'],
  [/\bten min/i, '10 min'],
];

function amountsIn(words: string, world: World): Amount[] {
  const written = [
    ...[...words.matchAll(new RegExp(AMOUNT, 'g'))].map(([amount]) => amount),
    ...IN_WORDS.filter(([said]) => said.test(words)).map(([, amount]) => amount),
  ];
  return written.flatMap((amount) => {
    const parsed = parseExpression(amount);
    const value = parsed.ok ? evaluateAmount(parsed.value, world) : parsed;
    return value.ok ? [value.value] : [];
  });
}

const SIDES: Readonly<Record<ComparisonSign, Bound['side'] | undefined>> = {
  '>': 'least',
  '>=': 'least',
  '<': 'most',
  '<=': 'most',
  '==': undefined,
  '!=': undefined,
};

function boundsOfGoal(goal: string, world: World): Bound[] {
  const parsed = parseExpression(goal);
  if (!parsed.ok) return [];
  const parts = parsed.value.is === 'both' ? parsed.value.of : [parsed.value];
  return parts.flatMap((part): Bound[] => {
    if (part.is !== 'comparison' || part.right.is !== 'amount') return [];
    const side = SIDES[part.sign];
    const compared = evaluateComparison(part, world);
    if (side === undefined || !compared.ok) return [];
    return [{ side, amount: compared.value.right, written: goal.slice(...part.place) }];
  });
}

function alike(one: Amount, other: Amount): boolean {
  return one.dimension === other.dimension && Math.abs(one.value - other.value) <= Math.abs(one.value) * SAME_PART;
}
