import type { Obtained } from '../../content/published/schema';
import { AIR } from '../physics/gas';
import type { Conventions, LimitModel } from '../tissue/models/limit-model';
import { minutesToReach, modelBreathedBar, modelNoStopMin, type ModelSite } from '../tissue/models/model-figures';
import { fromPublished, fromSetting, newChain, quantity, type Chain } from './chain';
import { DEPTH_RANGE_M } from './pressure-steps';
import { SOURCES } from './sources';
import type { Named, Working } from './working';

export interface ModelAsked {
  readonly model: LimitModel;
  /** How each of the model's conventions was come by. */
  readonly obtained: Readonly<Record<keyof Conventions, Obtained>>;
  readonly site: ModelSite;
  readonly depthM: number;
}

/** Why a model of any age gives its no-stop time on air to a rested diver set down at a depth; without gradient factors. */
export function modelNoStopWorking({ model, obtained, site, depthM }: ModelAsked): Working {
  const { value: minutes, leader } = modelNoStopMin(model, depthM, AIR, site);
  const limits = model.compartments.map((_, c) => model.toleratedTensionBar(c, site.surfaceBar));
  const own = (leader || limits.indexOf(Math.min(...limits)) + 1) - 1;
  const { name, halfTimeMin } = model.compartments[own]!;
  const breathedBar = modelBreathedBar(model, AIR, site.surfaceBar + depthM * site.barPerMetre);
  const heldBar = modelBreathedBar(model, AIR, site.surfaceBar);
  const chain = newChain();
  const surface = fromSetting('p_surface', { ...quantity(site.surfaceBar, 'bar'), meaning: 'pressure at the surface' });
  const ambient = chain.add({
    id: 'step:ambient',
    title: 'pressure around you',
    why: 'The air above the water and the water above you both press on you.',
    expression: 'p_surface + w * d',
    symbol: 'p_amb',
    values: [
      surface,
      fromSetting('w', { ...quantity(site.barPerMetre, 'bar/m'), meaning: 'pressure added per unit of depth, by the depth gauge’s convention' }),
      fromSetting('d', { ...quantity(depthM, 'm'), meaning: 'depth arrived at', within: DEPTH_RANGE_M }),
    ],
    result: quantity(site.surfaceBar + depthM * site.barPerMetre, 'bar'),
    source: SOURCES.water,
  });
  const lungs = lungsOf(chain, { model, obtained });
  const held = lungs('step:held', 'P_held', 'nitrogen held by a rested diver', 'Settled at the surface, every compartment holds what the lungs hold there.', surface, heldBar);
  const breathed = lungs('step:breathed', 'P_lungs', 'nitrogen in your lungs at depth', 'What every compartment heads for.', ambient, breathedBar);
  const limit = limitAtSurface(chain, model, own, surface);
  const arrival = chain.add({
    id: 'step:no-stop',
    title: 'no-stop time',
    why: 'Haldane’s solution turned round: when the compartment reaches its limit. There is no end if what you breathe stays below it.',
    expression: 'P_held >= M_0 ? 0 : P_lungs <= M_0 ? Infinity : t_half * log((P_lungs - P_held) / (P_lungs - M_0)) / log(2)',
    symbol: 't_nostop',
    values: [held, limit, breathed, fromPublished('t_half', { ...quantity(halfTimeMin, 'min'), meaning: 'half-time of this compartment' })],
    result: quantity(minutes, 'min'),
    source: SOURCES.loading,
  });
  return {
    reading: `no-stop-${model.id}`,
    title: `No-stop time by ${model.name}`,
    compartment: own + 1,
    answer: { ...arrival.value, text: Number.isFinite(minutes) ? `Compartment ${name} of this model is the first of its ${limits.length} to reach its limit.` : 'No compartment of this model ever reaches its limit here.' },
    steps: chain.steps,
    table: {
      caption: 'Each compartment of this model, to its own limit at the surface',
      columns: [
        { title: 'compartment', unit: '' },
        { title: 'half-time', unit: 'min' },
        { title: 'limit at the surface', unit: 'bar' },
        { title: 'no-stop time', unit: 'min' },
      ],
      rows: model.compartments.map((one, c) => [one.name, one.halfTimeMin, limits[c]!, minutesToReach(limits[c]!, heldBar, breathedBar, one.halfTimeMin)]),
      marked: own,
    },
  };
}

/** Nitrogen in the lungs at a pressure, as the model's makers took it. */
function lungsOf(chain: Chain, { model: { conventions, source }, obtained }: Pick<ModelAsked, 'model' | 'obtained'>) {
  const vapour = fromPublished('p_off', { ...quantity(conventions.lungOffsetBar, 'bar'), meaning: 'what this model takes off for water vapour in the lungs', obtained: obtained.lungOffsetBar });
  const fraction = fromPublished('F_air', { ...quantity(conventions.airNitrogen, ''), meaning: 'nitrogen in air as this model takes it', obtained: obtained.airNitrogen });
  return (id: `step:${string}`, symbol: string, title: string, why: string, pressure: Named, resultBar: number) =>
    chain.add({ id, title, why, expression: `(${pressure.symbol} - p_off) * F_air`, symbol, values: [pressure, vapour, fraction], result: quantity(resultBar, 'bar'), source });
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
      fromPublished('m_0', { ...quantity(interceptBar, 'bar'), meaning: 'where the line begins, without any pressure' }),
      fromPublished('m_1', { ...quantity(model.toleratedTensionBar(compartment, 1) - interceptBar, ''), meaning: 'how steeply the line rises' }),
      surface,
    ],
    result: quantity(model.toleratedTensionBar(compartment, surface.value.value), 'bar'),
    source: model.source,
  });
}
