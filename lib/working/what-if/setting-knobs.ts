import type { Settings, Start } from '../../dive/dive';
import { setSetting } from '../../dive/edit/edit-settings';
import { SETTINGS } from '../../dive/script/settings/settings';
import { DEPTH_SCALE_RANGE } from '../../dive/bounds';
import { RULES, type RuleId, type RuleSettings } from '../../rules/all';
import type { Condition } from '../../rules/rule';
import type { SettingList } from '../../rules/settings/setting';
import { believedDive } from '../../rules/unit/believed-dive';
import { compartments as publishedCompartments, type Compartments } from '../../tissue/coefficients';
import { accepted, refused } from '../../quantity/parsed';
import type { Asked, Knob } from './knob';
import { diveOfScript } from './step-knobs';

/** Numbers that a setting of the script, of a unit or of a rule says, and the model's coefficients, as what turns them. */

/** A setting of the script by its name there, as `put` changes it in settings of its own. */
function settingKnob(
  { dive, script }: Asked,
  name: string,
  put: (settings: Settings, value: number) => void,
  within?: readonly [number, number],
): Knob {
  return {
    ...(within && { within }),
    turn(value) {
      const settings = structuredClone(dive.settings);
      put(settings, value);
      if (script === undefined) return accepted({ dive: { ...dive, settings } });
      const words = SETTINGS.find((one) => one.name === name)!.write(settings);
      return diveOfScript(setSetting(script, name, typeof words === 'string' ? words : words?.join('; ')));
    },
  };
}

/** A gradient factor: of the unit itself where it goes by its own. */
export function factorKnob(asked: Asked, which: 'low' | 'high' | 'both'): Knob {
  const { dive, watch } = asked;
  const own = watch?.setup.gradientFactors ?? dive.settings.gradientFactors;
  const other = (value: number) => ({
    low: which === 'high' ? own.low : value,
    high: which === 'low' ? own.high : value,
  });
  const within = [which === 'high' ? own.low : 0.01, which === 'low' ? own.high : 1] as const;
  const setup = watch?.setup;
  if (setup?.gradientFactors)
    return { within, turn: (value) => accepted({ setup: { ...setup, gradientFactors: other(value) } }) };
  return settingKnob(
    asked,
    'gradient factors',
    (settings, value) => void (settings.gradientFactors = other(value)),
    within,
  );
}

/** The altitude of the site, and of the diver's home where that is the same place. */
export function altitudeKnob(asked: Asked): Knob {
  const setup = asked.watch?.setup;
  if (setup?.altitudeM !== undefined) return { turn: (altitudeM) => accepted({ setup: { ...setup, altitudeM } }) };
  return settingKnob(asked, 'altitude', (settings, altitudeM) => {
    const { start } = settings;
    if (start.kind === 'adapted' && start.altitudeM === settings.altitudeM) start.altitudeM = altitudeM;
    settings.altitudeM = altitudeM;
  });
}

/** What the diver began with: how high they had settled, and how long ago they came. */
export function startKnob(asked: Asked, which: 'home' | 'ago'): Knob {
  const arrived = asked.dive.settings.start.kind === 'arrived';
  return settingKnob(asked, arrived ? 'arrived from' : 'adapted to', ({ start }, value) => {
    if (which === 'ago' && start.kind === 'arrived') start.agoS = value * 60;
    else if (start.kind === 'arrived') start.fromM = value;
    else if (start.kind === 'adapted') start.altitudeM = value;
  });
}

/** A tension that an earlier dive left in one compartment. */
export function tensionKnob(asked: Asked, of: 'N2' | 'He', compartment: number): Knob {
  return settingKnob(asked, 'tissues', ({ start }, bar) => {
    const { nitrogenBar, heliumBar } = start as Extract<Start, { kind: 'tensions' }>;
    (of === 'N2' ? nitrogenBar : heliumBar)[compartment] = bar;
  });
}

/** What the lungs and the plan are set to, by the symbol each has in every working. */
export const PLAIN_SETTINGS: Readonly<Record<string, (asked: Asked) => Knob>> = {
  RQ: (asked) =>
    settingKnob(asked, 'respiratory quotient', ({ model }, value) => void (model.respiratoryQuotient = value)),
  v: (asked) => settingKnob(asked, 'plan ascent', ({ plan }, value) => void (plan.ascentMMin = value)),
  t_round: (asked) => settingKnob(asked, 'stop rounding', ({ plan }, value) => void (plan.stopRoundingMin = value)),
};

const COLUMNS = { t_half: 'HalfTimeMin', a: 'A', b: 'B' } as const;

/** A half-time or a limit of one compartment: the dive is worked out by a model that has another there. */
export function coefficientKnob(
  { timeline, dive }: Asked,
  which: keyof typeof COLUMNS,
  of: 'N2' | 'He',
  compartment: number,
): Knob {
  return {
    turn(value) {
      const { variant, first } = dive.settings.model;
      const from = timeline.compartments ?? publishedCompartments(variant, first);
      const copy = Object.fromEntries(
        Object.entries(from).map(([name, values]) => [name, (values as Float64Array).slice()]),
      ) as Record<keyof Compartments, Float64Array>;
      const gas = of === 'N2' ? 'nitrogen' : 'helium';
      copy[`${gas}${COLUMNS[which]}`][compartment] = value;
      if (which === 't_half') copy[`${gas}K`][compartment] = Math.LN2 / value;
      return accepted({ compartments: copy });
    },
  };
}

/** What a unit's own gauge makes of a change of depth. */
export function gaugeKnob({ watch }: Asked): Knob | undefined {
  if (!watch) return undefined;
  const { setup } = watch;
  const water = believedDive(watch.dive, setup).depthFactor / setup.depthScale;
  return {
    within: [DEPTH_SCALE_RANGE[0] * water, DEPTH_SCALE_RANGE[1] * water],
    turn: (factor) => accepted({ setup: { ...setup, depthScale: factor / water } }),
  };
}

type RuleNumber = { [Id in RuleId]: readonly [Id, keyof RuleSettings[Id] & string] }[RuleId];

/** Which rule's number a symbol is, by the reading it explains. */
const RULE_NUMBERS: Readonly<Record<string, Readonly<Record<string, RuleNumber>>>> = {
  rate: { t_avg: ['rateWatch', 'averageS'] },
  'safety-stop': {
    t_lasts: ['safetyStop', 'lastsS'],
    t_adds: ['longerSafetyStop', 'addsS'],
    t_most: ['longerSafetyStop', 'mostS'],
  },
  'imposed-stop': { t_lasts: ['imposedStop', 'lastsS'], t_most: ['imposedStop', 'mostS'] },
  'tightened-limits': {
    n_most: ['tighterLimits', 'mostTimes'],
    gf_floor: ['tighterLimits', 'floor'],
    gf_by: ['tighterLimits', 'by'],
  },
  'no-fly': { h_cabin: ['flyingWait', 'cabinM'], h_guide: ['flyingWait', 'requiredStopsH'] },
};

/** A number of a rule: the unit watches the dive again by it. */
export function ruleKnob({ working, watch }: Asked, symbol: string): Knob | undefined {
  const [id, name] = RULE_NUMBERS[working.reading]?.[symbol] ?? [];
  if (!watch || !id || !name) return undefined;
  const { settings, must = [] } = RULES.find((one) => one.id === id) as {
    settings: SettingList;
    must?: readonly Condition<never>[];
  };
  const may = settings[name]!.may as { from: number; to: number; whole: boolean };
  return {
    within: [may.from, may.to],
    turn(value) {
      if (may.whole && !Number.isInteger(value))
        return refused('That is counted in whole ones.', 'Write a whole number.');
      const own = { ...watch.rules[id], [name]: value };
      const broken = must.find(({ holds }) => !holds(own as never));
      if (broken) return refused(`The rule can’t be set so: ${broken.otherwise}.`, 'Write another number.');
      return accepted({ rules: { ...watch.rules, [id]: own } });
    },
  };
}
