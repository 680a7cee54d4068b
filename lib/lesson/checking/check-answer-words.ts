import type { ComparisonSign, Expression } from '../expression/expression';
import { parseExpression } from '../expression/parse-expression';
import type { Option } from '../questions/answer';
import type { Checker } from './checker';

/*
 * An answer to choose that begins with a direction says it once more in its condition: exchanged with another's, the
 * wrong one would be called right.
 */

const MORE = /^(?:more|longer|deeper|later|further|higher)\b/i;
const LESS = /^(?:less|fewer|shorter|shallower|sooner|earlier|lower)\b/i;
const SIGNS: Readonly<Record<'more' | 'less', readonly ComparisonSign[]>> = { more: ['>', '>='], less: ['<', '<='] };

/** Faults of answers whose first word and whose condition point in two directions. */
export function checkAnswerWords(options: readonly Option[], path: readonly PropertyKey[], checker: Checker): void {
  options.forEach(({ text, holds }, i) => {
    const way = MORE.test(text) ? 'more' : LESS.test(text) ? 'less' : undefined;
    if (way === undefined || holds === undefined) return;
    const parsed = parseExpression(holds);
    const sign = parsed.ok ? firstSign(parsed.value) : undefined;
    if (sign === undefined || SIGNS[way].includes(sign)) return;
    checker.fault(
      [...path, i, 'holds'],
      `This answer begins with “${text.split(/[\s,.:]/)[0]}”, and its condition is one for ${way === 'more' ? 'a smaller' : 'a larger'} value.`,
      'Turn its sign round, exchange it with that of the other answer, or write what the answer is about on the left.',
    );
  });
}

/** Which way a condition points: the sign of its first comparison, where that has a direction. */
function firstSign(expression: Expression): ComparisonSign | undefined {
  const first = expression.is === 'both' ? expression.of[0]! : expression;
  return first.is === 'comparison' && first.sign !== '==' && first.sign !== '!=' ? first.sign : undefined;
}
