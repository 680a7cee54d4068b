import atmosphere from '../../content/published/atmosphere.json';
import flying from '../../content/published/flying.json';
import gasDensity from '../../content/published/gas-density.json';
import gradientFactors from '../../content/published/gradient-factors.json';
import loading from '../../content/published/loading.json';
import oxygen from '../../content/published/oxygen.json';
import water from '../../content/published/water.json';
import zhl16 from '../../content/published/zhl16.json';

/** Where each formula of a working comes from. */
export const SOURCES = {
  atmosphere: atmosphere.source,
  water: `hydrostatic pressure; ${water.source}`,
  lungs: `alveolar gas equation; ${loading.source}`,
  loading: loading.source,
  limits: zhl16.source,
  gradientFactors: gradientFactors.source,
  dalton: 'Dalton’s law of partial pressures',
  narcosis: gasDensity.source,
  idealGas: 'the ideal gas law; molar masses: IUPAC standard atomic weights, abridged; molar gas constant: SI',
  oxygen: oxygen.source,
  oxygenBetweenRows: `a modelling choice of this project, between the rows of: ${oxygen.source}`,
  oxygenFading: 'common practice, no source',
  flying: flying.source,
  desaturated: 'a choice of this project: an exponential never ends, so that an edge has to be drawn',
  safetyStop: 'common practice, no source; the numbers are settings of the rule',
  rateWatch: 'the rate watch of this project: the numbers are settings of the rule',
  penalty: 'an illustrative rule of this project: the numbers are settings of the rule',
  arithmetic: 'arithmetic',
  schedule:
    'the rule of this project’s schedule: each stop ends at the first multiple of the stop rounding from which the climb keeps every limit',
} as const;
