import { gasAt } from '../../dive/timeline';
import {
  DENSITY_TEMPERATURE_C,
  densityBand,
  GAS_CONSTANT,
  gasDensityGL,
  HIGHEST_DENSITY_GL,
  MOLAR_MASS,
  RECOMMENDED_DENSITY_GL,
  ZERO_CELSIUS_K,
} from '../../exposure/gas-density';
import { nitrogenFraction } from '../../physics/gas';
import { deciding, fromDive, fromPublished, fromSetting, newChain, quantity } from '../chain';
import type { Instant } from '../instant';
import { ambientStep, FRACTION_RANGE, siteSteps } from '../steps/pressure-steps';
import { SOURCES } from '../sources';
import type { Working } from '../working';

const BANDS = [
  ['within what is recommended', 0],
  ['over what is recommended', RECOMMENDED_DENSITY_GL],
  ['over the most that is advised', HIGHEST_DENSITY_GL],
] as const;

/** Why the gas breathed is as dense as it is. */
export function gasDensityWorking(instant: Instant): Working {
  const { timeline, sample } = instant;
  const gas = gasAt(timeline, sample);
  const density = quantity(gasDensityGL(gas, timeline.ambientBar[sample]!), 'g/L');
  const { o2, n2, he } = MOLAR_MASS;
  const massOf = (symbol: string, value: number, name: string) =>
    fromPublished(symbol, { ...quantity(value, 'g/mol'), meaning: `molar mass of ${name}` });
  const chain = newChain();
  const ambient = ambientStep(chain, siteSteps(chain, timeline), instant);
  const mass = chain.add({
    id: 'step:molar-mass',
    title: 'mean molar mass of the gas',
    why: 'Each gas of the mixture counts by its fraction. What is neither oxygen nor helium is nitrogen.',
    expression: 'F_O2 * M_O2 + F_He * M_He + (1 - F_O2 - F_He) * M_N2',
    symbol: 'M_gas',
    values: [
      fromDive('F_O2', { ...quantity(gas.o2, ''), meaning: 'fraction of oxygen you breathe', within: FRACTION_RANGE }),
      massOf('M_O2', o2, 'oxygen'),
      fromDive('F_He', { ...quantity(gas.he, ''), meaning: 'fraction of helium you breathe', within: FRACTION_RANGE }),
      massOf('M_He', he, 'helium'),
      massOf('M_N2', n2, 'nitrogen'),
    ],
    result: quantity(gas.o2 * o2 + gas.he * he + nitrogenFraction(gas) * n2, 'g/mol'),
    source: SOURCES.idealGas,
  });
  chain.add({
    id: 'step:density',
    title: 'gas density',
    why: 'The same number of molecules fills the same room at the same pressure; heavier ones make a denser gas.',
    expression: 'p_amb * M_gas / (R * T)',
    symbol: 'D',
    values: [
      ambient,
      mass,
      fromPublished('R', { ...quantity(GAS_CONSTANT, 'bar·L/(mol·K)'), meaning: 'molar gas constant' }),
      fromSetting('T', {
        ...quantity(ZERO_CELSIUS_K + DENSITY_TEMPERATURE_C, 'K'),
        meaning: 'temperature the advised densities are told at',
        within: [250, 320],
      }),
    ],
    result: density,
    source: SOURCES.idealGas,
  });
  const band = densityBand(density.value);
  return {
    reading: 'gas-density',
    title: 'Gas density',
    answer: { ...density, text: `This is ${band}. Denser gas is harder to breathe, and carbon dioxide builds up.` },
    deciding: deciding(chain, [ambient, 'around you'], [mass, 'of gas']),
    steps: chain.steps,
    table: {
      caption: 'Densities advised (Anthony and Mitchell 2016; figures from memory)',
      columns: [
        { title: 'how it stands', unit: '' },
        { title: 'from', unit: 'g/L' },
      ],
      rows: BANDS.map(([name, from]) => [name, from]),
      marked: BANDS.findIndex(([name]) => name === band),
    },
  };
}
