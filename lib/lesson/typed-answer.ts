import { METRES_PER_FOOT } from '../quantity/length';
import { readNumber } from '../quantity/number';
import { accepted, refused, type Parsed } from '../quantity/parsed';
import { BAR_PER_PSI } from '../quantity/pressure';
import type { UnitSystem } from '../quantity/unit-system';
import { LITRES_PER_CUBIC_FOOT } from '../quantity/volume';
import { DIMENSION_UNITS, type Dimension } from './expression/dimension';

/** The unit a learner types a kind of value in, and its size in the unit of expressions. */
export interface AnswerUnit {
  readonly unit: string;
  readonly size: number;
}

const IMPERIAL: Partial<Readonly<Record<Dimension, AnswerUnit>>> = {
  depth: { unit: 'ft', size: METRES_PER_FOOT },
  pressure: { unit: 'psi', size: BAR_PER_PSI },
  rate: { unit: 'ft/min', size: METRES_PER_FOOT },
  volume: { unit: 'cu ft', size: LITRES_PER_CUBIC_FOOT },
};

/** The unit in which a person types an amount, and how much of the unit of expressions one of it is. */
export function answerUnit(dimension: Dimension, system: UnitSystem): AnswerUnit {
  return (system === 'imperial' ? IMPERIAL[dimension] : undefined) ?? { unit: DIMENSION_UNITS[dimension], size: 1 };
}

/** Reads a number typed without its unit, or with it; in the unit of expressions. */
export function readAnswer(text: string, dimension: Dimension, system: UnitSystem): Parsed<number> {
  const { unit, size } = answerUnit(dimension, system);
  const bare =
    unit !== '' && text.trim().toLowerCase().endsWith(unit.toLowerCase()) ? text.trim().slice(0, -unit.length) : text;
  if (bare.trim() === '')
    return refused('Nothing is written here.', `Write a number${unit === '' ? '' : ` of ${unit}`}.`);
  const read = readNumber(bare, unit);
  return read.ok ? accepted(read.value.value * size) : read;
}
