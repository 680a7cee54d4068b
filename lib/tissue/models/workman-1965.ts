import about from '../../../content/models/workman-1965.json';
import published from '../../../content/published/historic-models.json';
import water from '../../../content/published/water.json';
import { SEA_LEVEL_BAR } from '../../physics/atmosphere';
import { linearModel } from './linear-model';

const barPerMsw = water.msw.bar;

/** Nine compartments, each with a limit M = M0 + ΔM · depth in metres of sea water below a surface at one atmosphere. */
export const WORKMAN_1965 = linearModel(
  about,
  published.workman.map(({ halfTimeMin, surfacingMsw, slope }, i) => ({
    name: String(i + 1),
    halfTimeMin,
    interceptBar: surfacingMsw * barPerMsw - slope * SEA_LEVEL_BAR,
    slope,
  })),
);
