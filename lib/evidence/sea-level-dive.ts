import { defaultSettings } from '../dive/default-settings';
import type { Dive, GradientFactors, Settings, Step } from '../dive/dive';
import type { Gas } from '../physics/gas';

/** A dive at sea level in reference water under ZH-L16C with 1b, by someone who lives there: what most checks compare with. */
export function seaLevelDive(gas: Gas, steps: readonly Step[], gradientFactors: GradientFactors): Dive {
  const settings: Settings = { ...defaultSettings(), gradientFactors, gas };
  return { settings, steps: [...steps], lines: [] };
}

/** Legs told as depths to reach, each in its time, as steps. */
export function stepsThrough(legs: readonly { readonly toM: number; readonly durationS: number }[]): Step[] {
  let depthM = 0;
  return legs.map(({ toM, durationS }) => {
    const fromM = depthM;
    depthM = toM;
    if (toM === fromM) return { kind: 'stay', durationS };
    return { kind: toM > fromM ? 'descend' : 'ascend', toM, durationS };
  });
}
