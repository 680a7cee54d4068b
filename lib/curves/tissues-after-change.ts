import { breathedAt } from '../ascent/breathed';
import type { AscentSite } from '../ascent/plan/schedule';
import type { Gas } from '../physics/gas';
import { schreiner } from '../tissue/loading';
import { tissuesAfter, type Tissues } from '../tissue/tissues';

/** The tissues after a steady change of depth on one gas, in some minutes, as new tissues; a wait if the depths are the same. */
export function tissuesAfterChange(
  site: AscentSite,
  tissues: Tissues,
  gas: Gas,
  fromM: number,
  toM: number,
  minutes: number,
): Tissues {
  const start = breathedAt(site, gas, site.surfaceBar + fromM * site.barPerMetre);
  if (fromM === toM || minutes === 0) return tissuesAfter(tissues, site.compartments, start, minutes);
  const end = breathedAt(site, gas, site.surfaceBar + toM * site.barPerMetre);
  const { nitrogenK, heliumK } = site.compartments;
  const nitrogenRate = (end.nitrogenBar - start.nitrogenBar) / minutes;
  const heliumRate = (end.heliumBar - start.heliumBar) / minutes;
  return {
    nitrogenBar: tissues.nitrogenBar.map((bar, c) =>
      schreiner(bar, start.nitrogenBar, nitrogenRate, nitrogenK[c]!, minutes),
    ),
    heliumBar: tissues.heliumBar.map((bar, c) => schreiner(bar, start.heliumBar, heliumRate, heliumK[c]!, minutes)),
  };
}
