import { setSetups } from '../dive/edit/edit-setups';
import { SET_RIGHT } from '../dive/edit/set-right';
import type { Setup } from '../dive/setup';
import { DEFAULT_RULES, type RuleSettings } from '../rules/all';
import { watchDive } from '../rules/watch';
import { dayOf, type Day } from './day';
import { breachesOf, finely } from './breaches';
import { Owing } from './owing';
import { mostOwed, type Target } from './trouble';
import type { NoWayOut, Question, WayOut } from './ways-out';
import { AVOIDED, sayStops } from './words';

/** What a unit can be told otherwise than is so, and how it is put right. */
const SETTINGS: readonly { readonly called: string; right(setup: Setup): Setup; wrong(setup: Setup): boolean }[] = [
  {
    called: 'its gas',
    wrong: ({ gas }) => gas !== undefined,
    right: ({ gas: _gas, ...rest }) => rest,
  },
  {
    called: 'its limits',
    wrong: ({ gradientFactors }) => gradientFactors !== undefined,
    right: ({ gradientFactors: _factors, ...rest }) => rest,
  },
  {
    called: 'its altitude',
    wrong: ({ altitudeM }) => altitudeM !== undefined,
    right: ({ altitudeM: _altitude, ...rest }) => rest,
  },
  {
    called: 'its water',
    wrong: ({ water }) => water !== undefined,
    right: ({ water: _water, ...rest }) => rest,
  },
  {
    called: 'its depth sensor',
    wrong: ({ depthOffsetM, depthScale }) => depthOffsetM !== 0 || depthScale !== 1,
    right: (setup) => ({ ...setup, depthOffsetM: 0, depthScale: 1 }),
  },
  {
    called: 'its memory of the dives before',
    wrong: ({ freshBeforeDives }) => freshBeforeDives.length > 0,
    right: (setup) => ({ ...setup, freshBeforeDives: [] }),
  },
];

interface Asks {
  readonly asks: boolean;
  /** What is asked for, in words. */
  readonly said: string;
}

/**
 * For each unit a script names that asks for what a unit set right does not: the setting that makes the difference, and
 * the script with that setting put right. Where a unit set right asks too, the difference is no setting's.
 */
export function settingsThatMadeIt(
  script: string,
  { target, system, rules = DEFAULT_RULES }: Question,
): (WayOut | NoWayOut)[] {
  const day = dayOf(script, system);
  const setups = day?.dive.settings.setups ?? [];
  if (!day || setups.length === 0) return [];
  const asked = (setup: Setup) => whatIsAsked(day, setup, target, rules);
  const told = setups.map((setup) => ({ setup, ...asked(setup) }));
  const right = asked(SET_RIGHT);
  const common = { lever: 'setting', title: 'The setting that made the difference', dive: 1 };
  return told.flatMap(({ setup, asks, said }, index): (WayOut | NoWayOut)[] => {
    if (!asks) return [];
    const others = told
      .filter((_, other) => other !== index)
      .map((other) => `${other.setup.name} ${other.asks ? `asks for ${other.said}` : 'asks for nothing of the kind'}`);
    const beside = others.length > 0 ? ` Of the other units, ${others.join('; ')}.` : '';
    if (right.asks)
      return [
        {
          ...common,
          none: true,
          text: `${setup.name} asks for ${said}, and a unit set right for ${right.said}: no setting alone made it.${beside}`,
        },
      ];
    for (const { called, wrong, right: put } of SETTINGS) {
      if (!wrong(setup) || asked(put(setup)).asks) continue;
      return [
        {
          ...common,
          from: 0,
          to: 1,
          unit: '',
          cost: 'nothing of the dive',
          text: `${setup.name} asks for ${said}, which a unit set right does not: ${called} made the difference.${beside}`,
          script: setSetups(
            script,
            setups.map((one) => (one === setup ? put(setup) : one)),
          ),
        },
      ];
    }
    return [
      {
        ...common,
        none: true,
        text: `${setup.name} asks for ${said}: more than one of its settings made it.${beside}`,
      },
    ];
  });
}

function whatIsAsked(day: Day, setup: Setup, target: Target, rules: RuleSettings): Asks {
  const { everyS, intervalEveryS } = finely(day.dive);
  const watch = watchDive(day.dive, setup, rules, everyS, { intervalEveryS });
  if (setup.mode === 'gauge') return { asks: false, said: '' };
  if (target === 'slow-down') return { asks: breachesOf(watch).length > 0, said: AVOIDED[target] };
  if (
    !new Owing({ timeline: watch.timeline, figures: watch.figures, limits: watch.figures.limits }).first(target, false)
  )
    return { asks: false, said: '' };
  const { stopsMin } = mostOwed(watch);
  return { asks: true, said: stopsMin > 0 ? sayStops(stopsMin) : 'a ceiling to be kept' };
}
