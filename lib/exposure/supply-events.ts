import { printDayClock, sayAtDayClock, shownFromS } from '../dive/day-clock';
import type { Cylinder } from '../dive/supply';
import type { Timeline } from '../dive/timeline';
import { gasName, sameGas, type Gas } from '../physics/gas';
import { sayDepth } from '../quantity/depth';
import type { UnitSystem } from '../quantity/unit-system';
import type { RunOut, Spells } from './gas-spells';

/** A cylinder that can give no more. Either moment is null where it lasts to the end of its dive under that gas law. */
export interface OutOfGas {
  readonly kind: 'out-of-gas';
  /** The earlier of the two moments. */
  readonly timeS: number;
  readonly depthM: number;
  readonly cylinder: string;
  readonly gas: Gas;
  readonly idealS: number | null;
  readonly realS: number | null;
  /** The cylinder of the same gas that is breathed next, if there is one. */
  readonly next: string | null;
}

/** A gas is breathed that no cylinder holds. */
export interface NoCylinder {
  readonly kind: 'no-cylinder';
  readonly timeS: number;
  readonly depthM: number;
  readonly gas: Gas;
}

/** With its whole sentence in metric units. */
export type SupplyEvent = (OutOfGas | NoCylinder) & { readonly text: string };

/** What happens to a supply, in order of time. */
export function supplyEvents(
  timeline: Timeline,
  cylinders: readonly Cylinder[],
  ideal: Spells,
  real: Spells,
): SupplyEvent[] {
  const events = [...outOfGas(timeline, cylinders, ideal.runOuts, real.runOuts), ...noCylinder(timeline, cylinders)];
  return events
    .sort((one, other) => one.timeS - other.timeS)
    .map((event) => ({ ...event, text: saySupplyEvent(event, timeline, 'metric') }));
}

/** The sentence of an event of a day, in the units asked for. */
export function saySupplyEvent(event: OutOfGas | NoCylinder, day: Pick<Timeline, 'legs'>, system: UnitSystem): string {
  const at = sayAtDayClock(day, shownFromS(day, event.timeS));
  if (event.kind === 'no-cylinder') {
    return `${at} you breathe ${gasName(event.gas)} at ${sayDepth(event.depthM, system)}, and no cylinder here holds it.`;
  }
  const { cylinder, gas, depthM, idealS, realS, next } = event;
  const then = next === null ? `no other ${gasName(gas)} is left` : `you go on from “${next}”`;
  return `${at} the cylinder “${cylinder}” is empty: you can’t draw any more from it at ${sayDepth(depthM, system)}, and ${then}.${otherLaw(day, event.timeS, idealS, realS)}`;
}

function otherLaw(day: Pick<Timeline, 'legs'>, timeS: number, idealS: number | null, realS: number | null): string {
  if (idealS !== null && realS !== null && Math.abs(idealS - realS) < 1) return '';
  const counted = realS === timeS ? 'a real gas' : 'an ideal gas';
  const [other, otherS] = realS === timeS ? ['an ideal gas', idealS] : ['a real gas', realS];
  const lasts =
    otherS === null ? 'it would last the dive' : `it would last until ${printDayClock(day, otherS).toLowerCase()}`;
  return ` That is as ${counted}; as ${other} ${lasts}.`;
}

function outOfGas(
  timeline: Timeline,
  cylinders: readonly Cylinder[],
  ideal: readonly RunOut[],
  real: readonly RunOut[],
): OutOfGas[] {
  const diveAt = (timeS: number) => timeline.legs.find(({ endS }) => timeS <= endS)?.diveNumber ?? 0;
  const same = (one: RunOut, other: RunOut) =>
    one.cylinder === other.cylinder && diveAt(one.timeS) === diveAt(other.timeS);
  const told = (runOut: RunOut, idealS: number | null, realS: number | null): OutOfGas => ({
    kind: 'out-of-gas',
    timeS: runOut.timeS,
    depthM: runOut.depthM,
    cylinder: cylinders[runOut.cylinder]!.name,
    gas: cylinders[runOut.cylinder]!.gas,
    idealS,
    realS,
    next: cylinders[runOut.next]?.name ?? null,
  });
  const fromReal = real.map((own) => {
    const other = ideal.find((one) => same(one, own));
    return told(other && other.timeS < own.timeS ? other : own, other?.timeS ?? null, own.timeS);
  });
  const idealAlone = ideal.filter((own) => !real.some((one) => same(one, own)));
  return [...fromReal, ...idealAlone.map((own) => told(own, own.timeS, null))];
}

/** Once for every time a gas without a cylinder is taken up. */
function noCylinder({ legs, gases }: Timeline, cylinders: readonly Cylinder[]): NoCylinder[] {
  return legs.flatMap((leg, index): NoCylinder[] => {
    const gas = gases[leg.gas]!;
    const before = legs[index - 1];
    const takenUp = !before || before.gas !== leg.gas || before.interval;
    if (leg.interval || !takenUp || cylinders.some((one) => sameGas(one.gas, gas))) return [];
    return [{ kind: 'no-cylinder', timeS: leg.startS, depthM: leg.fromM, gas }];
  });
}
