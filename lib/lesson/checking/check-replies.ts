import type { NumberAnswer } from '../questions/answer';
import { evaluateAmount } from '../expression/evaluate';
import type { Expression } from '../expression/expression';
import { parseExpression } from '../expression/parse-expression';
import { partsOf } from '../expression/parts-of';
import { judgeCondition, type NumberAsked } from '../questions/judge';
import { withValues, type World } from '../expression/world';
import type { Checker } from './checker';

/*
 * Replies to a wrong number are tried with wrong numbers: each has to be said to some, and none may say "more" to a
 * number that is too high already.
 */

type Path = readonly PropertyKey[];

/** To which wrong numbers each reply is said, by its place; the last one is what is said otherwise. */
export type Heard = readonly { low: boolean; high: boolean }[];

const TIMES = [0, 0.1, 0.25, 0.5, 0.75, 0.9, 1.1, 1.25, 1.5, 2, 3, 5];

/** Tries the replies to a number in one world, and adds to what was heard in others. */
export function hearReplies({ wrong }: NumberAnswer, asked: NumberAsked, world: World, heard?: Heard): Heard {
  const { answer, within } = asked;
  const { dimension } = answer;
  const inside = withValues(world, { answer, within: { value: within, dimension } });
  const sum = heard ?? Array.from({ length: wrong.length + 1 }, () => ({ low: false, high: false }));
  for (const given of numbersToTry(wrong, asked, inside)) {
    const answered = withValues(inside, { given: { value: given, dimension } });
    const said = wrong.findIndex(({ when }) => {
      const so = judgeCondition(when, answered);
      return so.ok && so.value;
    });
    sum[said < 0 ? wrong.length : said]![given > answer.value ? 'high' : 'low'] = true;
  }
  return sum;
}

/** Faults of the replies to a number, once they were tried in every world. */
export function checkHeard({ wrong, otherwise }: NumberAnswer, heard: Heard, path: Path, checker: Checker): void {
  wrong.forEach(({ because }, i) => {
    const { low, high } = heard[i]!;
    if (low || high) direction([...path, 'wrong', i, 'because'], because, heard[i]!, checker);
    else
      checker.fault(
        [...path, 'wrong', i, 'when'],
        'No wrong answer is told this: the answers that count, or the replies before it, take them all.',
        'Turn its condition round, or move it up.',
      );
  });
  direction([...path, 'otherwise'], otherwise, heard[wrong.length]!, checker);
}

const LOWER =
  /^(?:(?:(?:it is )?(?:a little )?(?:less|fewer|sooner|earlier|shallower|shorter)|(?:that (?:is|would be) )?too (?:much|many|long|deep|far|late|high))\b|(?:in that direction, and )?not (?:so|as) (?:much|far|long|deep|many)\b|so (?:much|far|long|deep|many) it is not|that is (?:more|longer|deeper|later) than)/i;
const HIGHER =
  /^(?:(?:(?:it is |there was )?(?:a little )?(?:more|longer|later|deeper|further)|it takes more|(?:that is )?too (?:little|few|short|shallow|early|low|strict))\b(?! than \{\{)|you may go a little deeper|that is (?:less|shorter|shallower|earlier) than)/i;

function direction(path: Path, because: string, { low, high }: Heard[number], checker: Checker): void {
  const words = because.replaceAll('*', '').trim();
  const asks = LOWER.test(words) ? 'lower' : HIGHER.test(words) ? 'higher' : undefined;
  if (asks === undefined || !(asks === 'lower' ? low : high)) return;
  checker.fault(
    path,
    `This asks for a ${asks} number, and is said to answers that are too ${asks === 'lower' ? 'low' : 'high'}.`,
    'Turn the condition round, or give each side a reply of its own.',
  );
}

/** Wrong numbers around the answer, and around everything the replies hold a given number against. */
function numbersToTry(wrong: NumberAnswer['wrong'], { answer, within }: NumberAsked, world: World): number[] {
  const marks = wrong.flatMap(({ when }) => {
    const parsed = parseExpression(when);
    if (!parsed.ok) return [];
    return withoutGiven(parsed.value).flatMap((part) => {
      const amount = evaluateAmount(part, world);
      return amount.ok && Number.isFinite(amount.value.value) ? [amount.value.value] : [];
    });
  });
  const right = answer.value;
  const near = Math.max(1, Math.abs(right)) * 1e-6;
  return [
    ...TIMES.map((times) => right * times),
    ...[right, ...marks, ...marks.map((mark) => right + mark), ...marks.map((mark) => right - mark)].flatMap((mark) =>
      [near, within / 2, within * 1.01, within * 2].flatMap((off) => [mark - off, mark, mark + off]),
    ),
  ].filter((given) => Math.abs(given - right) > within + near && (given >= 0 || right < 0));
}

/** The largest parts of a condition that do not hang on what was given. */
function withoutGiven(expression: Expression): Expression[] {
  const parts = partsOf(expression);
  return hangsOnGiven(expression) ? parts.flatMap(withoutGiven) : [expression];
}

function hangsOnGiven(expression: Expression): boolean {
  return (expression.is === 'name' && expression.name === 'given') || partsOf(expression).some(hangsOnGiven);
}
