import { inertBarOf } from '../../ascent/ceiling';
import { loadAt } from '../../ascent/figures';
import { atmosphereBar } from '../../physics/atmosphere';
import { altitudeWaitOf, limitAfter, type AltitudeWait } from '../../rules/surface/altitude-wait';
import type { AfterDive } from '../../rules/surface/after-dive';
import { LONGEST_WAIT_MIN, restingAt } from '../../rules/surface/surface-interval';
import { fromDive, fromPublished, fromSetting, newChain, quantity, type Chain } from '../chain';
import { coefficientSteps, inertStep } from '../steps/compartment-steps';
import { gradientFactor, limitStep } from '../steps/limit-steps';
import { atmosphereStep, siteSteps } from '../steps/pressure-steps';
import { REMARKS } from '../remarks';
import { restedSteps, restingStep, soughtWait } from '../steps/resting-steps';
import { sixteenTable } from '../steps/sixteen-table';
import { SOURCES } from '../sources';
import { tensionSteps } from '../steps/tension-steps';
import { modelInstant, type UnitInstant } from './unit-instant';
import { withinAWeek } from '../steps/week-steps';
import type { Named, Search, Working } from '../working';
import { ALL_COMPARTMENTS } from '../../tissue/coefficients';

/** Why a unit counts so many hours until flying: what its model needs, what the guideline says, and the longer of the two. */
export function flyingWorking(unit: UnitInstant, { flying, sinceSurfacedS }: AfterDive): Working {
  // A penalty does not reach as far as the wait: it goes by the unit's own limits.
  const instant = { ...modelInstant(unit), figures: unit.watch.figures };
  const { timeline, sample } = instant;
  const { altitudeM, ambientBar } = flying;
  const resting = restingAt(timeline, sample);
  const compartment = (flying.model.leader || nearest(unit, ambientBar)) - 1;
  const load = loadAt(timeline, sample);
  const chain = newChain();
  const { model, search, legsLeftOut } = modelSteps(chain, instant, flying, compartment);
  const guideline = guidelineStep(chain, flying, sinceSurfacedS);
  chain.add({
    id: 'step:no-fly',
    title: 'hours to wait before flying',
    why: guideline
      ? 'The longer of what the model needs and what the guideline says.'
      : 'There is no guideline for this, so what the model needs.',
    expression: guideline ? `max(${model.symbol}, ${guideline.symbol})` : model.symbol,
    symbol: 'h_wait',
    values: guideline ? [model, guideline] : [model],
    result: quantity(Math.max(model.value.value, guideline?.value.value ?? 0), 'h'),
    source: guideline ? SOURCES.flying : SOURCES.arithmetic,
  });
  const { result } = chain.steps.at(-1)!;
  return {
    reading: 'no-fly',
    title: 'No flying for',
    ...(flying.longer === 'model' && flying.model.leader > 0 ? { compartment: compartment + 1 } : {}),
    answer: { ...result, text: answerText(flying) },
    steps: chain.steps,
    table: sixteenTable(
      timeline,
      `When each compartment would tolerate the pressure in the cabin`,
      [
        { title: 'tension now', unit: 'bar', of: (c) => inertBarOf(load, c) },
        {
          title: 'limit in the cabin',
          unit: 'bar',
          of: (c) => limitAfter(timeline, resting[c]!, 0, flying.highGradientFactor, ambientBar),
        },
        {
          title: 'wait',
          unit: 'min',
          of: (c) =>
            altitudeWaitOf(timeline, flying.highGradientFactor, [resting[c]!], atmosphereBar(altitudeM)).minutes,
        },
      ],
      compartment,
    ),
    ...(search ? { search } : {}),
    cautions: [
      ...(flying.guideline?.standIn
        ? [
            'The guideline gives no figure for dives with required stops, only “substantially longer”. The hours are a setting of this unit.',
          ]
        : []),
      ...(legsLeftOut > 0 ? [REMARKS.earlierLegs] : []),
      REMARKS.noWait,
    ],
  };
}

function answerText({ hoursLeft, longer, guideline }: AltitudeWait): string {
  if (hoursLeft <= 0) return 'Neither the model nor the guideline asks for any more waiting.';
  if (longer === 'model')
    return guideline ? 'The model needs longer than the guideline says.' : 'The model needs this long.';
  return 'The published guideline is longer than what the model needs: trials found cases after waits a model would allow.';
}

function modelSteps(
  chain: Chain,
  instant: ReturnType<typeof modelInstant>,
  flying: AltitudeWait,
  compartment: number,
): { model: Named; search?: Search; legsLeftOut: number } {
  const { timeline, figures } = instant;
  const { altitudeM, ambientBar, highGradientFactor } = flying;
  const site = siteSteps(chain, timeline);
  const held = tensionSteps(chain, site, instant, compartment);
  const rest = restingStep(chain, site, instant);
  const cabin = atmosphereStep(chain, altitudeM, ambientBar, {
    id: 'step:cabin',
    symbol: 'p_cabin',
    height: 'h_cabin',
    title: 'pressure in the cabin',
  });
  const { low, high } = figures.limits.gradientFactors;
  const gf = low === high ? gradientFactor('gf', high) : gradientFactor('gf_high', highGradientFactor, 'high');
  const names = {
    id: 'step:cabin-limit',
    symbol: 'M_cabin',
    title: 'what this compartment tolerates in the cabin',
    why: 'A flight is an ascent to a lower pressure; the same limit holds.',
  } as const;
  const modelName = { id: 'model-wait', symbol: 'h_model', title: 'hours the model needs' };
  if (held.helium) {
    const { minutes } = flying.model;
    const wait = soughtWait(minutes, LONGEST_WAIT_MIN);
    const inert = restedSteps(chain, held, rest, wait);
    const total = inertStep(chain, inert, {
      id: 'step:rested',
      symbol: 'P_later',
      title: 'both gases in this compartment at that time',
    });
    const limit = limitStep(chain, names, cabin, gf, coefficientSteps(chain, timeline, compartment, inert));
    chain.add({
      id: 'step:meeting',
      title: 'room left to the limit at that time',
      why: 'The time sought is the first at which this is nothing or more.',
      expression: 'M_cabin - P_later',
      symbol: 'x_later',
      values: [limit, total],
      result: quantity(limit.value.value - total.value.value, 'bar'),
      source: SOURCES.arithmetic,
    });
    const search: Search = {
      symbol: 't',
      until: 'step:meeting',
      fromMin: 0,
      horizonMin: LONGEST_WAIT_MIN,
      stepMin: 15,
    };
    return { model: withinAWeek(chain, wait, { ...modelName, minutes }), search, legsLeftOut: held.legsLeftOut };
  }
  const limit = limitStep(chain, names, cabin, gf, coefficientSteps(chain, timeline, compartment, held));
  const first = chain.add({
    id: 'step:first',
    title: 'when this compartment is within its limit for the cabin',
    why: 'Haldane’s solution turned round. At once if it is within it already; never if even air at the surface here leaves more than that.',
    expression: 'P_N2 <= M_cabin ? 0 : P_rest >= M_cabin ? Infinity : log((P_N2 - P_rest) / (M_cabin - P_rest)) / k_N2',
    symbol: 't_first',
    values: [held.nitrogen, limit, rest, held.nitrogenK],
    result: quantity(
      firstMin(held.nitrogen.value.value, limit.value.value, rest.value.value, held.nitrogenK.value.value),
      'min',
    ),
    source: SOURCES.loading,
  });
  return {
    model: withinAWeek(chain, first, { ...modelName, minutes: first.value.value }),
    legsLeftOut: held.legsLeftOut,
  };
}

function firstMin(tensionBar: number, limitBar: number, restBar: number, k: number): number {
  if (tensionBar <= limitBar) return 0;
  return restBar >= limitBar ? Infinity : Math.log((tensionBar - restBar) / (limitBar - restBar)) / k;
}

function guidelineStep(chain: Chain, { guideline }: AltitudeWait, sinceSurfacedS: number): Named | undefined {
  if (!guideline) return undefined;
  const value = {
    ...quantity(guideline.hours, 'h'),
    meaning: `wait after ${guideline.after}`,
    within: [0, 96],
  } as const;
  return chain.add({
    id: 'step:guideline',
    title: 'hours left by the published guideline',
    why: 'It counts from surfacing.',
    expression: 'max(0, h_guide - t_since / s_h)',
    symbol: 'h_left',
    values: [
      guideline.standIn ? fromSetting('h_guide', value) : fromPublished('h_guide', { ...value, obtained: 'read' }),
      fromDive('t_since', {
        ...quantity(sinceSurfacedS, 's'),
        meaning: 'time since surfacing',
      }),
      fromSetting('s_h', { ...quantity(3600, ''), meaning: 'seconds in an hour' }),
    ],
    result: quantity(Math.max(0, guideline.hours - sinceSurfacedS / 3600), 'h'),
    source: SOURCES.flying,
  });
}

/** The compartment (1–16) with the least room to its limit at a pressure. */
function nearest({ watch, sample }: UnitInstant, ambientBar: number): number {
  const { timeline, figures } = watch;
  const load = loadAt(timeline, sample);
  const resting = restingAt(timeline, sample);
  const gf = figures.limits.gradientFactors.high;
  const room = ALL_COMPARTMENTS.map((c) => limitAfter(timeline, resting[c]!, 0, gf, ambientBar) - inertBarOf(load, c));
  return room.indexOf(Math.min(...room)) + 1;
}
