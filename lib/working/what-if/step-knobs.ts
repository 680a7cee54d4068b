import { setStepDepth, SAME_DEPTH_M } from '../../dive/edit/edit-steps';
import { LONGEST_S } from '../../dive/bounds';
import type { Dive, Step } from '../../dive/dive';
import type { Leg } from '../../dive/legs';
import { parseScript } from '../../dive/script';
import { FASTEST_M_MIN } from '../../dive/script/leg-rate';
import { nitrogenFraction, type Gas } from '../../physics/gas';
import { accepted, refused, type Parsed } from '../../quantity/parsed';
import { believedDive } from '../../rules/unit/believed-dive';
import { DEPTH_RANGE_M } from '../steps/pressure-steps';
import type { Asked, Changed, Knob } from './knob';
import { FIXED } from './fixed';

/** Depths, times and gases of the steps of a dive, as what turns them; or why none does. */

/** How long a leg takes; of the one under way, how long until now. */
export function timeKnob(asked: Asked, index: number): Knob {
  const { timeline, sample, dive } = asked;
  const leg = timeline.legs[index]!;
  const lastsS = leg.endS - leg.startS;
  const underWay = index === timeline.leg[sample];
  const least = (Math.abs(leg.toM - leg.fromM) * 60) / FASTEST_M_MIN;
  if (underWay && !isLevel(leg)) {
    return { within: [0, lastsS / 60], turn: (minutes) => accepted({ intoLegS: minutes * 60 }) };
  }
  return {
    within: [isLevel(leg) ? 0 : Math.min(lastsS, least) / 60, LONGEST_S / 60],
    turn(minutes) {
      const seconds = minutes * 60;
      const durationS = underWay ? Math.max(lastsS, seconds) : seconds;
      return accepted({
        dive: withStep(dive, leg.step, (step) => ('durationS' in step ? { ...step, durationS } : step)),
        ...(underWay && { intoLegS: seconds }),
      });
    },
  };
}

/** The depth a leg begins or ends at; of the one under way, where it has come to. */
export function depthKnob(asked: Asked, index: number, end: 'begins' | 'ends'): Knob | string {
  const { timeline, sample } = asked;
  const leg = timeline.legs[index]!;
  if (leg.interval) return FIXED.atSurface;
  if (end === 'ends' && index === timeline.leg[sample] && !isLevel(leg)) return momentKnob(leg);
  const reached = end === 'ends' || isLevel(leg) ? index : index - 1;
  let moved = reached;
  while (moved >= 0 && !timeline.legs[moved]!.interval && isLevel(timeline.legs[moved]!)) moved -= 1;
  const move = timeline.legs[moved];
  if (!move || move.interval || move.toM <= 0) return FIXED.atSurface;
  return stepDepthKnob(asked, moved, move.step);
}

/** Where the diver is while the depth changes: another moment of the same leg. */
function momentKnob({ fromM, toM, startS, endS }: Leg): Knob {
  return {
    within: [Math.min(fromM, toM), Math.max(fromM, toM)],
    turn: (depthM) => accepted({ intoLegS: ((depthM - fromM) / (toM - fromM)) * (endS - startS) }),
  };
}

function stepDepthKnob({ dive, script, watch, timeline }: Asked, leg: number, step: number): Knob {
  const { depthFactor } = watch ? believedDive(watch.dive, watch.setup) : { depthFactor: 1 };
  const offsetM = watch?.setup.depthOffsetM ?? 0;
  const next = timeline.legs.slice(leg + 1).find((one) => !isLevel(one) || one.interval);
  const neighbours = [timeline.legs[leg]!.fromM, ...(next && !next.interval ? [next.toM] : [])];
  return {
    within: DEPTH_RANGE_M,
    turn(shownM) {
      const depthM = (shownM - offsetM) / depthFactor;
      if (!(depthM > 0)) return refused('The step ends under water.', 'Write a depth below the surface.');
      if (neighbours.some((otherM) => Math.abs(otherM - shownM) < SAME_DEPTH_M))
        return refused(
          'Then a change of depth would have nothing to change.',
          'Write another depth than the steps beside it.',
        );
      if (script === undefined) return accepted({ dive: movedTo(dive, step, depthM) });
      const edited = diveOfScript(setStepDepth(script, step, depthM));
      const said = edited.ok ? edited.value.dive?.steps[step] : undefined;
      return edited.ok && !(said && 'toM' in said && Math.abs(said.toM - depthM) <= ROUNDED_M)
        ? refused('The step can’t end there.', 'Write a depth between those of the steps beside it.')
        : edited;
    },
  };
}

/** A script says depths to a tenth of a metre or to a foot. */
const ROUNDED_M = 0.16;

/** The dive of an edited script. */
export function diveOfScript(script: string): Parsed<Partial<Changed>> {
  const parsed = parseScript(script);
  if (parsed.ok) return accepted({ dive: parsed.dive });
  const { message, mend } = parsed.errors[0]!;
  return refused(message, mend);
}

/** A dive that no script says, with a step to another depth: it and the next one go at the rates they went at. */
function movedTo(dive: Dive, index: number, depthM: number): Dive {
  let fromM = 0;
  let newFromM = 0;
  const steps = dive.steps.map((step, at): Step => {
    if (!('toM' in step)) return step;
    const toM = at === index ? depthM : step.toM;
    const share = Math.abs(toM - newFromM) / Math.abs(step.toM - fromM);
    fromM = step.toM;
    const moved = { kind: toM > newFromM ? 'descend' : 'ascend', toM, durationS: step.durationS * share } as const;
    newFromM = toM;
    return moved;
  });
  return { ...dive, steps };
}

const OTHER_GAS = {
  /** Another fraction of one gas, what is left of the mixture being nitrogen, or oxygen where nitrogen is said. */
  O2: ({ he }: Gas, o2: number): Gas => ({ o2, he }),
  He: ({ o2 }: Gas, he: number): Gas => ({ o2, he }),
  N2: ({ he }: Gas, n2: number): Gas => ({ o2: Math.max(0, 1 - he - n2), he }),
} as const;

export type Part = keyof typeof OTHER_GAS;

/** A fraction of what is breathed on a leg: the gas of the switch before it, or the one the dive begins on. */
export function gasKnob({ dive, timeline, watch }: Asked, index: number, part: Part): Knob | string {
  const leg = timeline.legs[index]!;
  if (leg.interval) return FIXED.airAtSurface;
  const gas = timeline.gases[leg.gas]!;
  const own = { O2: gas.o2, He: gas.he, N2: nitrogenFraction(gas) }[part];
  const rest = part === 'He' ? gas.o2 : gas.he;
  const wrongGas = watch?.setup.gas !== undefined && watch.believed !== watch.dive ? watch.setup : undefined;
  return {
    within: [0, Math.max(own, 1 - rest)],
    turn(fraction) {
      const other = OTHER_GAS[part](gas, fraction);
      if (wrongGas) return accepted({ setup: { ...wrongGas, gas: other } });
      const said = switchBefore(dive, leg.step);
      return accepted({
        dive:
          said === undefined
            ? { ...dive, settings: { ...dive.settings, gas: other } }
            : withStep(dive, said, () => ({ kind: 'switch', gas: other })),
      });
    },
  };
}

/** The switch that a step breathes by: the last one before it in its dive. */
function switchBefore({ steps }: Dive, step: number): number | undefined {
  for (let index = step - 1; index >= 0; index -= 1) {
    const kind = steps[index]!.kind;
    if (kind === 'interval') return undefined;
    if (kind === 'switch') return index;
  }
  return undefined;
}

function withStep(dive: Dive, index: number, change: (step: Step) => Step): Dive {
  return { ...dive, steps: dive.steps.map((step, at) => (at === index ? change(step) : step)) };
}

function isLevel({ fromM, toM }: Leg): boolean {
  return fromM === toM;
}
