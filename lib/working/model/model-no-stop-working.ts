import type { Obtained } from '../../../content/published/schema';
import { AIR } from '../../physics/gas';
import type { Conventions, LimitModel } from '../../tissue/models/limit-model';
import { minutesToReach, modelBreathedBar, modelNoStopMin } from '../../tissue/models/model-figures';
import { fromPublished, newChain, quantity, type Chain } from '../chain';
import type { Instant } from '../instant';
import { ambientStep, siteSteps } from '../steps/pressure-steps';
import { SOURCES } from '../sources';
import type { Named, Working } from '../working';

export interface ModelAsked {
  readonly model: LimitModel;
  /** How each of the model's conventions was come by. */
  readonly conventions: Readonly<Record<keyof Conventions, { readonly obtained: Obtained }>>;
}

/** Why a model of any age gives its no-stop time on air to a rested diver set down at the depth of an instant; without gradient factors. */
export function modelNoStopWorking(instant: Instant, { model, conventions }: ModelAsked): Working {
  const { timeline, sample } = instant;
  const { value: minutes, leader } = modelNoStopMin(model, timeline.depthM[sample]!, AIR, timeline);
  const limits = model.compartments.map((_, c) => model.toleratedTensionBar(c, timeline.surfaceBar));
  const own = (leader || limits.indexOf(Math.min(...limits)) + 1) - 1;
  const { name, halfTimeMin } = model.compartments[own]!;
  const breathedBar = modelBreathedBar(model, AIR, timeline.ambientBar[sample]!);
  const heldBar = modelBreathedBar(model, AIR, timeline.surfaceBar);
  const chain = newChain();
  const site = siteSteps(chain, timeline);
  const { surface } = site;
  const ambient = ambientStep(chain, site, instant);
  const lungs = lungsOf(chain, { model, conventions });
  const held = lungs(
    'step:held',
    'P_held',
    'nitrogen held by a rested diver',
    'Settled at the surface, every compartment holds what the lungs hold there.',
    surface,
    heldBar,
  );
  const breathed = lungs(
    'step:breathed',
    'P_lungs',
    'nitrogen in your lungs at depth',
    'What every compartment heads for.',
    ambient,
    breathedBar,
  );
  const limit = limitAtSurface(chain, model, own, surface);
  const arrival = chain.add({
    id: 'step:no-stop',
    title: 'no-stop time',
    why: 'Haldane’s solution turned round: when the compartment reaches its limit. There is no end if what you breathe stays below it.',
    expression:
      'P_held >= M_0 ? 0 : P_lungs <= M_0 ? Infinity : t_half * log((P_lungs - P_held) / (P_lungs - M_0)) / log(2)',
    symbol: 't_nostop',
    values: [
      held,
      limit,
      breathed,
      fromPublished('t_half', { ...quantity(halfTimeMin, 'min'), meaning: 'half-time of this compartment' }),
    ],
    result: quantity(minutes, 'min'),
    source: SOURCES.loading,
  });
  return {
    reading: `no-stop-${model.id}`,
    title: `No-stop time by ${model.name}`,
    compartment: own + 1,
    answer: {
      ...arrival.value,
      text: Number.isFinite(minutes)
        ? `Compartment ${name} of this model is the first of its ${limits.length} to reach its limit.`
        : 'No compartment of this model ever reaches its limit here.',
    },
    steps: chain.steps,
    table: {
      caption: 'Each compartment of this model, to its own limit at the surface',
      columns: [
        { title: 'compartment', unit: '' },
        { title: 'half-time', unit: 'min' },
        { title: 'limit at the surface', unit: 'bar' },
        { title: 'no-stop time', unit: 'min' },
      ],
      rows: model.compartments.map((one, c) => [
        one.name,
        one.halfTimeMin,
        limits[c]!,
        minutesToReach(limits[c]!, heldBar, breathedBar, one.halfTimeMin),
      ]),
      marked: own,
    },
  };
}

/** Nitrogen in the lungs at a pressure, as the model's makers took it. */
function lungsOf(chain: Chain, { model, conventions: { lungOffsetBar, airNitrogen } }: ModelAsked) {
  const vapour = fromPublished('p_off', {
    ...quantity(model.conventions.lungOffsetBar, 'bar'),
    meaning: 'what this model takes off for water vapour in the lungs',
    obtained: lungOffsetBar.obtained,
  });
  const fraction = fromPublished('F_air', {
    ...quantity(model.conventions.airNitrogen, ''),
    meaning: 'nitrogen in air as this model takes it',
    obtained: airNitrogen.obtained,
  });
  return (id: `step:${string}`, symbol: string, title: string, why: string, pressure: Named, resultBar: number) =>
    chain.add({
      id,
      title,
      why,
      expression: `(${pressure.symbol} - p_off) * F_air`,
      symbol,
      values: [pressure, vapour, fraction],
      result: quantity(resultBar, 'bar'),
      source: model.source,
    });
}

function limitAtSurface(chain: Chain, model: LimitModel, compartment: number, surface: Named): Named {
  const interceptBar = model.toleratedTensionBar(compartment, 0);
  return chain.add({
    id: 'step:surface-limit',
    title: 'what this compartment tolerates at the surface',
    why: 'In this model the limit is a straight line over the pressure around you.',
    expression: 'm_0 + m_1 * p_surface',
    symbol: 'M_0',
    values: [
      fromPublished('m_0', {
        ...quantity(interceptBar, 'bar'),
        meaning: 'where the line begins, without any pressure',
        obtained: 'derived',
      }),
      fromPublished('m_1', {
        ...quantity(model.toleratedTensionBar(compartment, 1) - interceptBar, ''),
        meaning: 'how steeply the line rises',
        obtained: 'derived',
      }),
      surface,
    ],
    result: quantity(model.toleratedTensionBar(compartment, surface.value.value), 'bar'),
    source: model.source,
  });
}
