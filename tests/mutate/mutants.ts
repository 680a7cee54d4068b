import ts from 'typescript';

/** One small mistake put into a file: the characters from `start` to `end` said otherwise. */
export interface Mutant {
  readonly file: string;
  readonly start: number;
  readonly end: number;
  readonly instead: string;
}

const OTHER_OPERATOR: Partial<Record<ts.SyntaxKind, string>> = {
  [ts.SyntaxKind.PlusToken]: '-',
  [ts.SyntaxKind.MinusToken]: '+',
  [ts.SyntaxKind.AsteriskToken]: '/',
  [ts.SyntaxKind.SlashToken]: '*',
  [ts.SyntaxKind.PercentToken]: '*',
  [ts.SyntaxKind.LessThanToken]: '<=',
  [ts.SyntaxKind.LessThanEqualsToken]: '<',
  [ts.SyntaxKind.GreaterThanToken]: '>=',
  [ts.SyntaxKind.GreaterThanEqualsToken]: '>',
  [ts.SyntaxKind.EqualsEqualsEqualsToken]: '!==',
  [ts.SyntaxKind.ExclamationEqualsEqualsToken]: '===',
  [ts.SyntaxKind.AmpersandAmpersandToken]: '||',
  [ts.SyntaxKind.BarBarToken]: '&&',
  [ts.SyntaxKind.QuestionQuestionToken]: '&&',
  [ts.SyntaxKind.PlusEqualsToken]: '-=',
  [ts.SyntaxKind.MinusEqualsToken]: '+=',
};

/**
 * Two measured figures are equal by chance alone, so that between them only the direction can be mistaken: with their edge
 * moved, a comparison does the same. Against a written number, or how many there are of something, the edge counts. Not so
 * against how many compartments there are: past the sixteenth of a typed array nothing is written, and what is read there is
 * no number, which is neither more nor less than any.
 */
const TURNED: Partial<Record<ts.SyntaxKind, string>> = {
  [ts.SyntaxKind.LessThanToken]: '>',
  [ts.SyntaxKind.LessThanEqualsToken]: '>=',
  [ts.SyntaxKind.GreaterThanToken]: '<',
  [ts.SyntaxKind.GreaterThanEqualsToken]: '<=',
};

const isCounted = (side: ts.Expression): boolean => ts.isNumericLiteral(side) || /(length|count)$/.test(side.getText());

function otherOperator({ left, operatorToken, right }: ts.BinaryExpression): string | undefined {
  const turned = isCounted(left) || isCounted(right) ? undefined : TURNED[operatorToken.kind];
  return turned ?? OTHER_OPERATOR[operatorToken.kind];
}

/** What counts things is mistaken by a whole one: a hundredth of one more lets no other through. */
const COUNTS = /^(MOST_|LONGEST_\w+_NAME$|LAST_|COMPARTMENTS$)/;

/** A little more than 0 is no mistake where it stands for "none": what is none or some is compared with it. */
const OTHER_NUMBER: Readonly<Record<string, string>> = { '0': '1', '1': '0' };

const OTHER_FUNCTION: Readonly<Record<string, string>> = {
  'Math.min': 'Math.max',
  'Math.max': 'Math.min',
  'Math.floor': 'Math.ceil',
  'Math.ceil': 'Math.floor',
  'Math.round': 'Math.floor',
};

/**
 * Every mistake that is put into a file: operators, comparisons, conditions, numbers, roundings and truths turned into
 * others. Words are mistaken where a file is made of them (`words`). Types, imports and messages of errors are left alone.
 */
export function mutantsIn(file: string, text: string, words: boolean): Mutant[] {
  const source = ts.createSourceFile(file, text, ts.ScriptTarget.Latest, true);
  const mutants: Mutant[] = [];
  const put = (node: ts.Node, instead: string) =>
    mutants.push({ file, start: node.getStart(source), end: node.getEnd(), instead });

  const visit = (node: ts.Node): void => {
    if (ts.isTypeNode(node) || ts.isImportDeclaration(node) || ts.isInterfaceDeclaration(node)) return;
    if (ts.isTypeAliasDeclaration(node) || ts.isThrowStatement(node)) return;
    if (ts.isBinaryExpression(node)) {
      const other = otherOperator(node);
      // Text put together is no sum.
      const joinsText = ts.isStringLiteralLike(node.left) || ts.isStringLiteralLike(node.right);
      if (other !== undefined && !joinsText) put(node.operatorToken, other);
    }
    if (ts.isIfStatement(node)) for (const truth of ['true', 'false']) put(node.expression, truth);
    if (ts.isConditionalExpression(node)) for (const truth of ['true', 'false']) put(node.condition, truth);
    if (ts.isPrefixUnaryExpression(node) && node.operator === ts.SyntaxKind.ExclamationToken)
      put(node, node.operand.getText(source));
    if (ts.isPrefixUnaryExpression(node) && node.operator === ts.SyntaxKind.MinusToken)
      put(node, node.operand.getText(source));
    if (ts.isNumericLiteral(node)) {
      const { parent } = node;
      const counts = ts.isVariableDeclaration(parent) && COUNTS.test(parent.name.getText(source));
      put(node, OTHER_NUMBER[node.text] ?? (counts ? `${node.text} + 1` : `(${node.text} * 1.01 + 0.01)`));
    }
    if (node.kind === ts.SyntaxKind.TrueKeyword) put(node, 'false');
    if (node.kind === ts.SyntaxKind.FalseKeyword) put(node, 'true');
    if (ts.isPropertyAccessExpression(node)) {
      const other = OTHER_FUNCTION[node.getText(source)];
      if (other !== undefined) put(node, other);
    }
    if (words && (ts.isStringLiteral(node) || ts.isNoSubstitutionTemplateLiteral(node)) && / /.test(node.text))
      put(node, "'mistaken words'");
    ts.forEachChild(node, visit);
  };
  visit(source);
  return mutants;
}

export function mutated(text: string, { start, end, instead }: Mutant): string {
  return text.slice(0, start) + instead + text.slice(end);
}

/** The line a mutant begins on, from 1. */
export function lineOf(text: string, { start }: Mutant): number {
  return text.slice(0, start).split('\n').length;
}

/** Where a mutant is and what it says, in one line. */
export function told(text: string, mutant: Mutant): string {
  return `${mutant.file}:${lineOf(text, mutant)}  ${text.slice(mutant.start, mutant.end)}  →  ${mutant.instead}`;
}
