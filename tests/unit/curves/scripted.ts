import { defaultSettings } from '@/lib/dive/default-settings';
import type { Dive, Settings, Step } from '@/lib/dive/dive';

/** Settings as left out of a script, with some put in. */
export function settingsWith(some: Partial<Settings> = {}): Settings {
  return { ...defaultSettings(), ...some };
}

/** A dive in steps under such settings. */
export function diveOf(some: Partial<Settings>, ...steps: Step[]): Dive {
  return { settings: settingsWith(some), steps, lines: [] };
}

/** Down to a depth at a rate. */
export function down(toM: number, mMin: number): Step {
  return { kind: 'descend', toM, durationS: (toM * 60) / mMin };
}

/** A stay of some minutes. */
export function stay(minutes: number): Step {
  return { kind: 'stay', durationS: minutes * 60 };
}
