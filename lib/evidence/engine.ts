import { ceilingAtGf, coefficientsOf } from '../ascent/ceiling';
import { figuresOf } from '../ascent/figures';
import { noStop } from '../ascent/no-stop';
import { computeTimeline } from '../dive/timeline';
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
  ceilingAtGf,
  coefficientsOf,
  compartments,
  computeTimeline,
  figuresOf,
  haldane,
  limitBar,
  lungOffsetBar,
  mValueBar,
  noStop,
  schreiner,
  seaLevelBar: SEA_LEVEL_BAR,
  standardGravity: STANDARD_GRAVITY,
  toleratedAmbientBar,
  waterVapourBar: WATER_VAPOUR_BAR,
};

export type Engine = typeof ENGINE;
