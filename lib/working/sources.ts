import atmosphere from '../../content/published/atmosphere.json';
import gasDensity from '../../content/published/gas-density.json';
import gradientFactors from '../../content/published/gradient-factors.json';
import loading from '../../content/published/loading.json';
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
  arithmetic: 'arithmetic',
  schedule: 'the rule of this project’s schedule: each stop ends at the first multiple of the stop rounding from which the climb keeps every limit',
} as const;
