import { ceilingAtGf, coefficientsOf } from '../ascent/ceiling';
import { figuresOf } from '../ascent/figures';
import { noStop } from '../ascent/no-stop';
import { computeTimeline } from '../dive/timeline';
import { compressibility } from '../exposure/compressibility';
import { bestMix, equivalentAirDepthM, equivalentNarcoticDepthM, gasModM, hypoxicAboveM } from '../exposure/gas-depths';
import { gasDensityGL } from '../exposure/gas-density';
import { dailyLimitMin, pulmonaryRate, singleLimitMin } from '../exposure/oxygen-rates';
import { atmosphereBar, SEA_LEVEL_BAR } from '../physics/atmosphere';
import { barPerMetre, STANDARD_GRAVITY } from '../physics/water';
import { alveolarInertBar, lungOffsetBar, WATER_VAPOUR_BAR } from '../tissue/alveolar';
import { compartments } from '../tissue/coefficients';
import { limitBar, mValueBar, toleratedAmbientBar } from '../tissue/limit';
import { haldane, schreiner } from '../tissue/loading';

/**
 * What the checks put to the test. Each group takes it as an argument, so that a deliberately damaged engine can be put
 * through the same checks to see that they notice.
 */
export const ENGINE = {
  alveolarInertBar,
  atmosphereBar,
  barPerMetre,
  bestMix,
  ceilingAtGf,
  coefficientsOf,
  compartments,
  compressibility,
  computeTimeline,
  dailyLimitMin,
  equivalentAirDepthM,
  equivalentNarcoticDepthM,
  figuresOf,
  gasDensityGL,
  gasModM,
  haldane,
  hypoxicAboveM,
  limitBar,
  lungOffsetBar,
  mValueBar,
  noStop,
  pulmonaryRate,
  schreiner,
  seaLevelBar: SEA_LEVEL_BAR,
  singleLimitMin,
  standardGravity: STANDARD_GRAVITY,
  toleratedAmbientBar,
  waterVapourBar: WATER_VAPOUR_BAR,
};

export type Engine = typeof ENGINE;
