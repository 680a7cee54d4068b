import type { Cylinder } from '@/lib/dive/supply';
import type { Reserve } from '@/lib/exposure/reserve';
import { turnPressure, type TurnPressure, type TurnRule } from '@/lib/exposure/turn-pressure';
import { sameGas } from '@/lib/physics/gas';

/** When to turn by one cylinder of the gas breathed at the deepest point. */
export interface CylinderTurn {
  readonly cylinder: Cylinder;
  /** The larger of the two gas laws' reserves, bar on the gauge. */
  readonly reserveBar: number;
  readonly turn: TurnPressure;
}

/** The turn pressures of the cylinders that hold the bottom gas; none where no cylinder holds it or the ascent never ends. */
export function turnsOf(reserve: Reserve, cylinders: readonly Cylinder[], rule: TurnRule): CylinderTurn[] {
  const need = reserve.needs[0];
  if (!need || need.idealBar === null || need.realBar === null) return [];
  const reserveBar = Math.max(need.idealBar, need.realBar);
  if (!Number.isFinite(reserveBar)) return [];
  return cylinders
    .filter(({ gas }) => sameGas(gas, need.gas))
    .map((cylinder) => ({ cylinder, reserveBar, turn: turnPressure(rule, cylinder.startBar, reserveBar) }));
}
