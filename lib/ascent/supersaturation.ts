import { COMPARTMENTS } from '../tissue/coefficients';
import { coefficientsOf, inertBarOf, type Load } from './ceiling';

/** A supersaturation and the compartment (1–16) that sets it. */
export interface Supersaturation {
  readonly value: number;
  readonly leader: number;
}

/**
 * One compartment's (P − p_amb)/(M(p_amb) − p_amb): 0 at equilibrium, 1 at the model's own limit, negative while it is
 * still taking gas up. The limit is the published one, without a gradient factor.
 */
export function supersaturationOf(load: Load, compartment: number, ambientBar: number): number {
  const { a, b } = coefficientsOf(load, compartment);
  return (inertBarOf(load, compartment) - ambientBar) / (a + ambientBar / b - ambientBar);
}

/** The largest of the sixteen at an ambient pressure, bar: the diver's own for "now", the surface's for "surfacing". */
export function supersaturation(load: Load, ambientBar: number): Supersaturation {
  let value = -Infinity;
  let leader = 0;
  for (let c = 0; c < COMPARTMENTS; c += 1) {
    const own = supersaturationOf(load, c, ambientBar);
    if (own > value) {
      value = own;
      leader = c + 1;
    }
  }
  return { value, leader };
}
