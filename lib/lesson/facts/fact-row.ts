import { DIMENSION_UNITS, type Dimension } from '../expression/dimension';
import type { Fact, ParameterKind } from './fact';

const EXAMPLES: Readonly<Record<ParameterKind, string>> = {
  compartment: '5',
  depth: '18 m',
  altitude: '2000 m',
  pressure: '1.4 bar',
  cylinder: '1',
  event: 'ceiling-clears',
};

/** How a fact is written, with its arguments: `tensionBar(5)`. */
export function factForm({ name, parameters = [] }: Pick<Fact, 'name' | 'parameters'>): string {
  return parameters.length === 0 ? name : `${name}(${parameters.map((kind) => EXAMPLES[kind]).join(', ')})`;
}

/** A fact as a row of the table its authors read, in Markdown. A star marks what is not worked out for every moment. */
export function factRow(fact: Fact): string {
  const star = fact.of === 'moment' && fact.dear ? ' \\*' : '';
  return `| \`${factForm(fact)}\`${star} | ${unitWord(fact.dimension)} | ${fact.meaning} |`;
}

function unitWord(dimension: Dimension): string {
  return DIMENSION_UNITS[dimension] || (dimension === 'compartment' ? 'number of a compartment' : 'number');
}
