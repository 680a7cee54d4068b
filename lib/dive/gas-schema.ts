import { checker } from './checker';
import { gasOf } from './gas-schema-of';

/** A breathing gas as data: fractions of oxygen and helium, 0–1; the rest is nitrogen. */
export const gasSchema = gasOf(checker);
