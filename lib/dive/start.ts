import { AIR, nitrogenFraction } from '../physics/gas';
import { atmosphereBar } from '../physics/atmosphere';
import { alveolarInertBar } from '../tissue/alveolar';
import type { Compartments } from '../tissue/coefficients';
import { tissuesAfter, tissuesSettledOnAir, type Tissues } from '../tissue/tissues';
import type { Settings } from './dive';

/** The tissues a dive begins with: settled at an altitude, on the way to settling at the site, or carried over. */
export function startingTissues(settings: Settings, compartments: Compartments): Tissues {
  const { start, model } = settings;
  const quotient = model.respiratoryQuotient;
  if (start.kind === 'tensions') {
    return { nitrogenBar: Float64Array.from(start.nitrogenBar), heliumBar: Float64Array.from(start.heliumBar) };
  }
  if (start.kind === 'adapted') return tissuesSettledOnAir(atmosphereBar(start.altitudeM), quotient);
  const atSite = alveolarInertBar(atmosphereBar(settings.altitudeM), nitrogenFraction(AIR), quotient);
  return tissuesAfter(
    tissuesSettledOnAir(atmosphereBar(start.fromM), quotient),
    compartments,
    { nitrogenBar: atSite, heliumBar: 0 },
    start.agoS / 60,
  );
}
