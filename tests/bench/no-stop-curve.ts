import { breathedAt } from '@/lib/ascent/breathed';
import { noStop } from '@/lib/ascent/no-stop';
import { siteOf } from '@/lib/dive/timeline';
import { AIR } from '@/lib/physics/gas';
import { lungOffsetBar } from '@/lib/tissue/alveolar';
import { compartments } from '@/lib/tissue/coefficients';
import { tissuesSettledOnAir } from '@/lib/tissue/tissues';
import type { Workload } from './workload';
import { diveOf } from '../unit/read';

const LIMITS = [0.75, 0.85, 0.95];

export const noStopCurve: Workload = {
  name: 'no-stop-curve',
  about: 'no-stop times on air from 5 to 60 m, every 0.1 m, under three limits',
  samples: 200,
  prepare() {
    const site = {
      ...siteOf(diveOf('gas: air\n')),
      compartments: compartments('C', '1b'),
      lungOffsetBar: lungOffsetBar(1),
    };
    const load = { ...site, ...tissuesSettledOnAir(site.surfaceBar, 1), at: 0 };
    return () => {
      let sum = 0;
      for (const gf of LIMITS) {
        for (let tenths = 50; tenths <= 600; tenths += 1) {
          const breathed = breathedAt(site, AIR, site.surfaceBar + (tenths / 10) * site.barPerMetre);
          sum += Math.min(noStop(load, breathed, gf).minutes, 999);
        }
      }
      return sum;
    };
  },
};
