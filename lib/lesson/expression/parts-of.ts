import type { Expression } from './expression';

/** What an expression is put together of, one level down; nothing of a fact, a name or an amount. */
export function partsOf(expression: Expression): readonly Expression[] {
  switch (expression.is) {
    case 'amount':
    case 'name':
    case 'fact':
      return [];
    case 'negative':
    case 'not':
      return [expression.of];
    case 'arithmetic':
    case 'comparison':
      return [expression.left, expression.right];
    default:
      return expression.of;
  }
}
