import { create } from 'zustand';
import { defaultSettings } from '@/lib/dive/default-settings';
import type { GradientFactors, Settings } from '@/lib/dive/dive';
import type { Narcotic } from '@/lib/exposure/gas-depths';
import type { Gas } from '@/lib/physics/gas';
import type { Water } from '@/lib/physics/water';

/** Where the sums are done and what counts as narcotic: the same for every part of the screen. */
export interface SiteState {
  readonly water: Water;
  readonly altitudeM: number;
  readonly gradientFactors: GradientFactors;
  readonly narcotic: Narcotic;
  readonly set: (change: Partial<Pick<SiteState, 'water' | 'altitudeM' | 'gradientFactors' | 'narcotic'>>) => void;
}

const usual = defaultSettings();

export const useSite = create<SiteState>()((set) => ({
  water: usual.water,
  altitudeM: usual.altitudeM,
  gradientFactors: usual.gradientFactors,
  narcotic: 'nitrogen and oxygen',
  set,
}));

/** Settings of a dive at the site, on a gas; the diver lives at its altitude. */
export function siteSettings(
  { water, altitudeM, gradientFactors }: Pick<SiteState, 'water' | 'altitudeM' | 'gradientFactors'>,
  gas?: Gas,
): Settings {
  return {
    ...defaultSettings(),
    water,
    altitudeM,
    start: { kind: 'adapted', altitudeM },
    gradientFactors,
    ...(gas && { gas }),
  };
}
