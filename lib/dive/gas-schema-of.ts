import type { Checker } from './checker';
import { WHOLE_GAS } from '../physics/gas';

/** A breathing gas as data: fractions of oxygen and helium, 0–1; the rest is nitrogen. Asks for the checker, so that a screen that only reads scripts needn't fetch it. */
export function gasOf({ number, object }: Pick<Checker, 'number' | 'object'>) {
  const fraction = number().min(0).max(1);
  return object({ o2: fraction, he: fraction }).refine(
    (gas) => gas.o2 + gas.he <= WHOLE_GAS,
    'oxygen and helium together are more than 100%',
  );
}
