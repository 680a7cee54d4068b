import type {
  ConditionalNode,
  ConstantNode,
  FunctionNode,
  MathNode,
  OperatorNode,
  ParenthesisNode,
  SymbolNode,
} from 'mathjs';

/** Longest expression that is read, in characters. */
export const LONGEST_EXPRESSION = 400;
/** Largest expression that is worked out, in nodes of its tree. */
const MOST_NODES = 150;

const FUNCTIONS: ReadonlySet<string> = new Set(['exp', 'log', 'sqrt', 'min', 'max', 'abs', 'pow', 'ceil']);
const OPERATORS: ReadonlySet<string> = new Set([
  'add',
  'subtract',
  'multiply',
  'divide',
  'pow',
  'unaryMinus',
  'smaller',
  'smallerEq',
  'larger',
  'largerEq',
]);

/** A node of an expression as it may stand in a working. */
export type FormulaNode =
  | ConstantNode<number>
  | SymbolNode
  | ParenthesisNode
  | OperatorNode
  | (FunctionNode & { readonly fn: SymbolNode })
  | ConditionalNode;

/**
 * mathjs, restricted: arithmetic, comparisons in a condition, and a few functions, on the symbols given. No names of its own,
 * no assignment, no functions made, no ranges, matrices, texts or properties.
 */
export interface Calculator {
  /** The value of an expression. Throws RangeError, saying why, for one that is not allowed. It may be infinite or not a number. */
  evaluate(expression: string, values: Readonly<Record<string, number>>): number;
  /** The tree of an allowed expression. */
  tree(expression: string): MathNode;
}

interface Understood {
  readonly tree: MathNode;
  readonly symbols: ReadonlySet<string>;
  readonly compiled: { evaluate(scope: Map<string, number>): unknown };
}

let loaded: Promise<Calculator> | undefined;

/** Loads mathjs the first time it is asked for. */
export function loadCalculator(): Promise<Calculator> {
  loaded ??= import('./restricted-math').then(
    ({ parse }) => calculator(parse),
    (error: unknown) => {
      // A failed load may be tried again.
      loaded = undefined;
      throw error;
    },
  );
  return loaded;
}

function calculator(parse: (expression: string) => MathNode): Calculator {
  const understood = new Map<string, Understood>();
  const understand = (expression: string): Understood => {
    const before = understood.get(expression);
    if (before) return before;
    if (expression.length > LONGEST_EXPRESSION)
      throw new RangeError(`an expression in a working has at most ${LONGEST_EXPRESSION} characters`);
    const tree = read(parse, expression);
    const symbols = allowedSymbols(tree);
    const made = { tree, symbols, compiled: tree.compile() };
    understood.set(expression, made);
    return made;
  };
  return {
    tree: (expression) => understand(expression).tree,
    evaluate(expression, values) {
      const { symbols, compiled } = understand(expression);
      const scope = new Map<string, number>();
      for (const symbol of symbols) {
        if (!Object.hasOwn(values, symbol)) throw new RangeError(`${symbol} has no value in this working`);
        const value = values[symbol];
        if (typeof value !== 'number') throw new RangeError(`${symbol} is not a number`);
        scope.set(symbol, value);
      }
      const result = compiled.evaluate(scope);
      if (typeof result !== 'number') throw new RangeError('the expression does not yield a number');
      return result;
    },
  };
}

function read(parse: (expression: string) => MathNode, expression: string): MathNode {
  try {
    return parse(expression);
  } catch (error) {
    throw new RangeError(`this is not an expression: ${error instanceof Error ? error.message : String(error)}`, {
      cause: error,
    });
  }
}

/** The symbols of an expression; throws RangeError at anything a working has no use for. */
function allowedSymbols(tree: MathNode): Set<string> {
  const symbols = new Set<string>();
  let nodes = 0;
  const visit = (node: MathNode): void => {
    nodes += 1;
    if (nodes > MOST_NODES) throw new RangeError(`an expression in a working has at most ${MOST_NODES} parts`);
    const known = node as FormulaNode;
    switch (known.type) {
      case 'ConstantNode':
        if (typeof known.value !== 'number' || Number.isNaN(known.value))
          throw new RangeError('only numbers may stand in a working');
        return;
      case 'SymbolNode':
        symbols.add(known.name);
        return;
      case 'ParenthesisNode':
        visit(known.content);
        return;
      case 'OperatorNode':
        if (!OPERATORS.has(known.fn) || known.implicit)
          throw new RangeError(`${known.op} has no place in a working, nor has a sign left out`);
        known.args.forEach(visit);
        return;
      case 'FunctionNode':
        if (known.fn.type !== 'SymbolNode' || !FUNCTIONS.has(known.fn.name))
          throw new RangeError(`a working knows no function but ${[...FUNCTIONS].join(', ')}`);
        known.args.forEach(visit);
        return;
      case 'ConditionalNode':
        visit(known.condition);
        visit(known.trueExpr);
        visit(known.falseExpr);
        return;
      default:
        throw new RangeError(`a working knows arithmetic alone, not ${(node as MathNode).type}`);
    }
  };
  visit(tree);
  return symbols;
}
