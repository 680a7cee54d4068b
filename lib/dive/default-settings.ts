import type { Settings } from './dive';
import { usualOf } from './script/settings/setting';
import { FIELDS } from './script/settings/fields';

/** What a script means by the settings it leaves out. Made new each time, so that a caller may change it. */
export function defaultSettings(): Settings {
  const { model, plan, ...single } = FIELDS;
  return {
    ...usualOf(single),
    altitudeM: 0,
    start: { kind: 'adapted', altitudeM: 0 },
    model: usualOf(model),
    carried: [],
    plan: usualOf(plan),
    setups: [],
  };
}
