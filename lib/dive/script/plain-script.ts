import { writeTime } from '../../quantity/duration';
import { METRES_PER_FOOT } from '../../quantity/length';
import { plainNumber } from '../../quantity/number';
import type { UnitSystem } from '../../quantity/unit-system';
import { defaultSettings } from '../default-settings';
import type { Dive, Settings, Step } from '../dive';
import { writeGas } from '../gas-text';
import { FASTEST_M_MIN, legDurationS, legRateMMin } from './leg-rate';
import { SETTINGS } from './settings/settings';

/** A dive in the words the language itself would choose, whatever its lines say; reads back as the same dive. */
export function plainScript(dive: Pick<Dive, 'settings' | 'steps'>): string {
  return [...settingLines(dive.settings), ...stepLines(dive.steps)].join('\n') + '\n';
}

/** The settings worth writing: a few always, the others when they are not as usual. */
function settingLines(settings: Settings): string[] {
  const usual = defaultSettings();
  return SETTINGS.flatMap((setting) => {
    const words = setting.write(settings);
    if (words === undefined || (!setting.always && words === setting.write(usual))) return [];
    return [words].flat().map((line) => `${setting.name}: ${line}`);
  });
}

const LENGTHS = {
  metric: { name: 'm', sizeM: 1 },
  imperial: { name: 'ft', sizeM: METRES_PER_FOOT },
} as const satisfies Record<UnitSystem, { name: string; sizeM: number }>;

/** Each step as a line of a script, in metres or in feet. */
export function stepLines(steps: readonly Step[], system: UnitSystem = 'metric'): string[] {
  let fromM = 0;
  return steps.map((step) => {
    const words = stepWords(step, fromM, system);
    if ('toM' in step) fromM = step.toM;
    if (step.kind === 'interval') fromM = 0;
    return words;
  });
}

/** One step in words, from the depth it begins at. */
export function stepWords(step: Step, fromM: number, system: UnitSystem = 'metric'): string {
  const { name, sizeM } = LENGTHS[system];
  switch (step.kind) {
    case 'stay':
    case 'interval':
      return `${step.kind} ${writeTime(step.durationS)}`;
    case 'switch':
      return `switch to ${writeGas(step.gas)}`;
    case 'descend':
    case 'ascend':
      return `${step.kind} to ${step.toM === 0 ? 'surface' : `${plainNumber(step.toM / sizeM)} ${name}`} ${speedWords(fromM, step.toM, step.durationS, system)}`;
  }
}

/** As a whole rate when that is exactly what it is, which reads best; else as a time. */
function speedWords(fromM: number, toM: number, durationS: number, system: UnitSystem): string {
  const { name, sizeM } = LENGTHS[system];
  const rate = Math.round(legRateMMin(fromM, toM, durationS) / sizeM);
  const exact = rate > 0 && rate * sizeM <= FASTEST_M_MIN && legDurationS(fromM, toM, rate * sizeM) === durationS;
  return exact ? `at ${rate} ${name}/min` : `in ${writeTime(durationS)}`;
}
