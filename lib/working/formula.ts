import type { MathNode, OperatorNode, ParenthesisNode } from 'mathjs';
import { sixFigures } from '../quantity/number';
import { loadCalculator, type Calculator, type FormulaNode } from './calculator';
import type { Quantity, SymbolName, Unit, WorkingStep } from './working';

/** A quantity as it is to be read in a formula: its number with a point or a true minus sign, and its unit's name. */
export type PrintQuantity = (quantity: Quantity) => { readonly number: string; readonly unit: string };

export interface FormulaOptions {
  /** Numbers and units in place of symbols, and the result. */
  readonly withNumbers: boolean;
  /** How quantities are printed; in the model's own units to six figures where left out. */
  readonly print?: PrintQuantity;
}

/** Sets formulas in MathML, as `<math>` elements, once what it takes is loaded. */
export interface Typesetter {
  readonly calculator: Calculator;
  /** In pieces, each an element of its own, so that a narrow page breaks before a sign. */
  step(step: WorkingStep, options: FormulaOptions): readonly string[];
  symbol(symbol: SymbolName): string;
}

/** Loads mathjs and the typesetting, the first time they are asked for. */
export async function loadTypesetter(): Promise<Typesetter> {
  const [calculator, { default: temml }] = await Promise.all([loadCalculator(), import('temml')]);
  // Inline styles only fine-tune spacing, and a page with a strict content policy would refuse them.
  const set = (tex: string, displayMode: boolean) =>
    temml.renderToString(tex, { displayMode, throwOnError: true, strict: true }).replace(/ style="[^"]*"/g, '');
  return {
    calculator,
    // Nothing before a sign, so that it keeps the room of one that stands between two things.
    step: (step, options) =>
      stepTex(calculator, step, options).map((tex, index) => set(index > 0 ? `{}${tex}` : tex, true)),
    symbol: (symbol) => set(symbolTex(symbol), false),
  };
}

/**
 * A step's formula in TeX, `p_amb = p_surface + w·d`, or with numbers put in and the result after them: in pieces, each
 * but the first with the sign before it that joins it on.
 */
export function stepTex(
  calculator: Calculator,
  step: WorkingStep,
  { withNumbers, print = plainly }: FormulaOptions,
): readonly string[] {
  const shown = (symbol: SymbolName) => {
    const value = step.values[symbol];
    return withNumbers && value ? bracketedTex(print(value)) : symbolTex(symbol);
  };
  const tex = (node: MathNode) => nodeTex(node, shown, withNumbers);
  const symbol = symbolTex(step.symbol);
  const tree = calculator.tree(step.expression);
  if (!withNumbers) return [symbol, ...after('=', termsOf(tree, tex))];
  const { holds, when } = caseOf(tree, new Map(Object.entries(step.values).map(([name, { value }]) => [name, value])));
  const isPlain = when !== undefined && (holds.type === 'ConstantNode' || holds.type === 'SymbolNode');
  return [
    symbol,
    ...(isPlain ? [] : after('=', termsOf(holds, tex))),
    `= ${quantityTex(print(step.result))}`,
    ...(when ? [`\\text{as } ${tex(when.args[0]!)}`, `${COMPARED[when.fn]} ${tex(when.args[1]!)}`] : []),
  ];
}

/** What a working comes to where it has cases: the one that holds, and the condition that says so unless all others failed. */
function caseOf(
  tree: MathNode,
  values: ReadonlyMap<string, number>,
): { readonly holds: MathNode; readonly when?: OperatorNode | undefined } {
  const known = tree as FormulaNode;
  if (known.type !== 'ConditionalNode') return { holds: tree };
  return known.condition.compile().evaluate(new Map(values)) === true
    ? { holds: known.trueExpr, when: known.condition as OperatorNode }
    : caseOf(known.falseExpr, values);
}

const COMPARED: Readonly<Record<string, string>> = {
  smaller: '<',
  smallerEq: '\\leq',
  larger: '>',
  largerEq: '\\geq',
};

/** Pieces with a sign before the first of them. */
function after(sign: string, [first = '', ...others]: readonly string[]): readonly string[] {
  return [`${sign} ${first}`, ...others];
}

const WORDS: Readonly<Record<string, string>> = {
  nostop: 'no-stop',
  half: '1/2',
  N2: 'N₂',
  O2: 'O₂',
  H2O: 'H₂O',
  CO2: 'CO₂',
};

/** A symbol with its subscripts: `P_alv_N2_3` is P with the subscript "alv, N₂, 3". */
export function symbolTex(symbol: SymbolName): string {
  const [head = '', ...subscripts] = symbol.split('_');
  const letter = head.length > 1 ? `\\text{${head}}` : head;
  return subscripts.length === 0
    ? letter
    : `${letter}_{\\text{${subscripts.map((word) => WORDS[word] ?? word).join(', ')}}}`;
}

const SIGNS: Readonly<Record<string, string>> = { add: '+', subtract: '-', multiply: '\\cdot' };

/** A sum by its terms and they by their factors, each but the first with its sign. A fraction too long for a line is one too. */
function termsOf(tree: MathNode, tex: (node: MathNode) => string): readonly string[] {
  const known = tree as FormulaNode;
  if (known.type !== 'OperatorNode' || known.args.length !== 2) return [tex(tree)];
  const [left, right] = known.args as unknown as readonly [FormulaNode, FormulaNode];
  if (known.fn === 'divide' && [left, right].some((part) => lettersIn(tex(part)) > LONGEST_FRACTION))
    return [...factorsOf(left, tex), ...after('/', factorsOf(right, tex, true))];
  const sign = SIGNS[known.fn];
  if (!sign) return [tex(tree)];
  const ofProduct = known.fn === 'multiply';
  const goesOn = left.type === 'OperatorNode' && (ofProduct ? left.fn === 'multiply' : true);
  const before = goesOn ? termsOf(left, tex) : ofProduct ? factorsOf(left, tex) : [tex(left)];
  const second =
    !ofProduct && right.type === 'OperatorNode' && right.fn === 'multiply'
      ? termsOf(right, tex)
      : known.fn === 'add'
        ? [tex(right)]
        : factorsOf(right, tex);
  return [...before, ...after(sign, second)];
}

/** What stands in a product, or after a minus sign or a stroke: a sum of its own keeps its brackets, and `below` so does a product. */
function factorsOf(node: MathNode, tex: (node: MathNode) => string, below = false): readonly string[] {
  const within = (
    (node as FormulaNode).type === 'ParenthesisNode' ? (node as ParenthesisNode).content : node
  ) as FormulaNode;
  const fn = within.type === 'OperatorNode' ? within.fn : '';
  const isSum = ['add', 'subtract', 'unaryMinus'].includes(fn);
  const pieces = termsOf(within, tex);
  return isSum || (below && pieces.length > 1)
    ? pieces.map((piece, i) => `${i === 0 ? '(' : ''}${piece}${i === pieces.length - 1 ? ')' : ''}`)
    : pieces;
}

/** So many letters of a fraction's line fit on a narrow sheet. */
const LONGEST_FRACTION = 30;

/** How many letters something set in TeX has, about. */
function lettersIn(tex: string): number {
  return tex.replace(/\\text|\\[a-z]+|[{}_^\s\\,]/gi, '').length;
}

/** Each piece begins with a space where it may follow a command, such as the sign of a product. */
function nodeTex(tree: MathNode, shown: (symbol: SymbolName) => string, withNumbers: boolean): string {
  const options = {
    parenthesis: 'auto',
    handler(node: MathNode): string | undefined {
      const known = node as FormulaNode;
      const tex = (part: MathNode) => part.toTex(options);
      switch (known.type) {
        case 'SymbolNode':
          return ` ${shown(known.name)}`;
        case 'FunctionNode':
          return known.fn.name === 'exp' ? ` e^{${tex(known.args[0]!)}}` : undefined;
        case 'OperatorNode':
          // A number with its unit is one thing: a power of it needs brackets.
          return withNumbers && known.fn === 'pow' && known.args[0]!.type === 'SymbolNode'
            ? `\\left(${tex(known.args[0]!)}\\right)^{${tex(known.args[1]!)}}`
            : undefined;
        case 'ConditionalNode':
          return casesTex(known, tex);
        default:
          return undefined;
      }
    },
  };
  return tree.toTex(options);
}

/** Conditions one after another as one brace of cases. */
function casesTex(node: FormulaNode, tex: (part: MathNode) => string): string {
  const lines: string[] = [];
  let rest: MathNode = node;
  for (let known = node; known.type === 'ConditionalNode'; known = rest as FormulaNode) {
    lines.push(`${tex(known.trueExpr)} & \\text{if } ${tex(known.condition)}`);
    rest = known.falseExpr;
  }
  lines.push(`${tex(rest)} & \\text{otherwise}`);
  return `\\begin{dcases} ${lines.join(' \\\\ ')} \\end{dcases}`;
}

/** Units that are read otherwise than they are written. */
export const UNIT_NAMES: Partial<Record<Unit, string>> = { '1/min': 'per min', '1/bar': 'per bar' };

function plainly({ value, unit }: Quantity): Printed {
  const number = sixFigures(value);
  return { number, unit: UNIT_NAMES[unit] ?? unit };
}

interface Printed {
  readonly number: string;
  readonly unit: string;
}

function quantityTex({ number, unit }: Printed): string {
  if (/^∞$|Infinity/.test(number)) return '\\infty';
  return `${number.replace('−', '-')}${unit === '' ? '' : `\\,\\text{${unit}}`}`;
}

/** A negative number within a formula stands in brackets. */
function bracketedTex(printed: Printed): string {
  return /^[-−]/.test(printed.number) ? `\\left(${quantityTex(printed)}\\right)` : quantityTex(printed);
}
