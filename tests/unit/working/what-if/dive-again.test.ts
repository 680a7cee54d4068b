/* Long because it makes by hand, in the text of a script, the edit behind every kind of number there is. */
import { describe, expect, it } from 'vitest';
import { figuresOf } from '@/lib/ascent/figures';
import { parseScript } from '@/lib/dive/script';
import { legsOf } from '@/lib/dive/legs';
import type { Setup } from '@/lib/dive/setup';
import { SET_RIGHT } from '@/lib/dive/edit/set-right';
import { computeTimeline, sampleAt, type Timeline } from '@/lib/dive/timeline';
import { ruleSettingsSchema } from '@/lib/rules/settings/rule-settings';
import type { RuleSettings } from '@/lib/rules/all';
import { watchDive, type Watch } from '@/lib/rules/watch';
import type { Compartments } from '@/lib/tissue/coefficients';
import { READING_IDS, workingFor } from '@/lib/working/all';
import { RULE_READING_IDS, UNIT_READING_IDS, unitWorkingFor, type UnitReadingId } from '@/lib/working/rules/unit-all';
import { diveAgain, type DiveAgain } from '@/lib/working/what-if/dive-again';
import type { Working, WorkingValue } from '@/lib/working/working';

/*
 * What a working says when one of its numbers is changed, beside what the desk works out of a script that someone has
 * edited by hand: each number's edit is made here in the text, by its line, and not by the edits the what-if makes.
 */

/** Every leg is a line, so that leg 3 is the third line that takes time. */
const DEEP = `gas: air
gradient factors: 50/85
plan ascent: 9 m/min
stop rounding: 1 min
descend to 18 m at 18 m/min
stay 10 min
descend to 36 m at 9 m/min
stay 22 min
ascend to 6 m at 12 m/min
stay 5 min
ascend to surface at 9 m/min
interval 50 min
descend to 16 m at 18 m/min
stay 30 min
ascend to surface at 9 m/min
interval 30 min
`;
const MIXED = `altitude: 1500 m
arrived from: 300 m, 120 min ago
respiratory quotient: 0.9
gas: 18/45
carry: 50% from 21 m
gradient factors: 30/80
plan ascent: 9 m/min
stop rounding: 1 min
descend to 55 m at 18 m/min
stay 14 min
ascend to 21 m at 9 m/min
switch to 50/10
stay 4 min
ascend to 9 m at 6 m/min
stay 20 min
ascend to surface at 9 m/min
interval 200 min
`;
const LEFT = `gas: 32/0
gradient factors: 80/80
tissues: nitrogen ${Array(16).fill('1.1').join(' ')} bar, helium ${Array(16).fill('0.1').join(' ')} bar
descend to 30 m at 18 m/min
stay 35 min
ascend to surface at 25 m/min
interval 20 min
`;

/** Moments of each: on the way down, staying, on the way up, at a stop, on a later dive, at the surface. */
const MOMENTS: Readonly<Record<string, readonly number[]>> = {
  [DEEP]: [1930, 2190, 5745],
  [MIXED]: [800, 1500],
  [LEFT]: [2000],
};

/** How finely what is edited by hand is sampled, s: otherwise than the what-if does. */
const EVERY_S = 20;

interface Desk {
  readonly timeline: Timeline;
  readonly watch?: Watch;
  working(reading: UnitReadingId): Working | null;
}

interface With {
  readonly compartments?: Compartments;
  readonly setup?: Setup;
  readonly rules?: RuleSettings;
}

const known = new Map<string, Desk>();

/** What the desk has of a script at a moment of one of its legs; of the model, or of a unit. */
function desk(script: string, leg: number, intoS: number, { compartments, setup, rules }: With): Desk {
  const key = JSON.stringify([
    script,
    leg,
    intoS,
    compartments?.nitrogenA,
    compartments?.nitrogenB,
    compartments?.nitrogenK,
    compartments?.heliumA,
    compartments?.heliumB,
    compartments?.heliumK,
    setup,
    rules,
  ]);
  const before = known.get(key);
  if (before) return before;
  const parsed = parseScript(script);
  if (!parsed.ok) throw new Error(`${parsed.errors[0]!.message}\n${script}`);
  const { dive } = parsed;
  const { startS, endS } = legsOf(dive).legs[leg]!;
  const nowS = Math.min(endS, startS + intoS);
  const options = { alsoEveryS: nowS > 0 ? [nowS] : [], compartments };
  let made: Desk;
  if (setup && rules) {
    const watch = watchDive(dive, setup, rules, 5, { ...options, intervalEveryS: 60 });
    const sample = sampleAt(watch.timeline, nowS + 1e-7);
    made = { timeline: watch.timeline, watch, working: (reading) => unitWorkingFor(reading, { watch, sample }) };
  } else {
    const timeline = computeTimeline(dive, EVERY_S, options);
    const figures = figuresOf(timeline, dive.settings);
    const sample = sampleAt(timeline, nowS + 1e-7);
    made = { timeline, working: (reading) => workingFor(reading as never, timeline, figures, sample) };
  }
  known.set(key, made);
  return made;
}

interface Edited extends With {
  readonly script: string;
  readonly intoS: number;
}

interface Place {
  readonly script: string;
  readonly timeline: Timeline;
  readonly leg: number;
  readonly intoS: number;
  readonly working: Working;
  readonly setup?: Setup;
  readonly rules?: RuleSettings;
}

const STEP = /^(descend|ascend|stay|interval)/;

function lineOfLeg(lines: readonly string[], leg: number): number {
  return lines.findIndex(
    (line, at) => STEP.test(line) && lines.slice(0, at).filter((one) => STEP.test(one)).length === leg,
  );
}

/** The edit a person would make for a number, in the text. */
function byHand(place: Place, symbol: string, to: number): Edited {
  const { script, timeline, leg: now, intoS, working, setup, rules } = place;
  const lines = script.split('\n');
  const same = { script, intoS, ...(setup && { setup }), ...(rules && { rules }) };
  const edit = (line: number, text: string): Edited => ({
    ...same,
    script: lines.map((one, at) => (at === line ? text : one)).join('\n'),
  });
  const setting = (name: string, text: string): Edited => {
    const at = lines.findIndex((line) => line.startsWith(`${name}: `));
    return at >= 0 ? edit(at, `${name}: ${text}`) : { ...same, script: `${name}: ${text}\n${script}` };
  };
  const step = /^(d|t|F_N2|F_He|F_O2|F_narc)(?:_(\d+)(_end)?)?$/.exec(symbol);
  if (step && !(step[1] === 't' && !step[2])) {
    const [, what, number, end] = step;
    const leg = number ? Number(number) - 1 : now;
    const { fromM, toM, startS, endS } = timeline.legs[leg]!;
    const line = lineOfLeg(lines, leg);
    const text = lines[line]!;
    if (what === 't') {
      if (leg === now && fromM !== toM) return { ...same, intoS: to * 60 };
      if (leg === now)
        return {
          ...edit(line, text.replace(/[\d.]+ min/, `${Math.max((endS - startS) / 60, to)} min`)),
          intoS: to * 60,
        };
      return edit(
        line,
        fromM === toM ? text.replace(/[\d.]+ min/, `${to} min`) : text.replace(/at .*/, `in ${to * 60} s`),
      );
    }
    if (what === 'd') {
      if (leg === now && fromM !== toM && (end || !number))
        return { ...same, intoS: ((to - fromM) / (toM - fromM)) * (endS - startS) };
      let move = end || fromM === toM ? leg : leg - 1;
      while (timeline.legs[move]!.fromM === timeline.legs[move]!.toM) move -= 1;
      const at = lineOfLeg(lines, move);
      const trueM = setup ? (to - setup.depthOffsetM) / setup.depthScale : to;
      return edit(at, lines[at]!.replace(/to [\d.]+ m/, `to ${Number(trueM.toFixed(9))} m`));
    }
    const { o2, he } = timeline.gases[timeline.legs[leg]!.gas]!;
    const percent = (share: number) => Number((share * 100).toFixed(9));
    const counted = what === 'F_narc' ? (working.reading === 'end' ? 'all but helium' : 'F_N2') : what;
    const other = {
      F_O2: [to, he],
      F_He: [o2, to],
      F_N2: [1 - he - to, he],
      'all but helium': [o2, 1 - to],
    }[counted as 'F_O2']!;
    const said = `${percent(other[0]!)}/${percent(other[1]!)}`;
    const before = lines.slice(0, line).findLastIndex((one) => one.startsWith('switch') || one.startsWith('interval'));
    return before >= 0 && lines[before]!.startsWith('switch')
      ? edit(before, `switch to ${said}`)
      : setting('gas', said);
  }
  const factors = /gradient factors: (\d+)\/(\d+)/.exec(script)!;
  const share = Number((to * 100).toFixed(9));
  if (symbol.startsWith('gf') && symbol !== 'gf_floor' && symbol !== 'gf_by') {
    const [low, high] = [symbol === 'gf_high' ? factors[1] : share, symbol === 'gf_low' ? factors[2] : share];
    return setting('gradient factors', `${low}/${high}`);
  }
  const coefficient = /^(t_half|a|b)(?:_(N2|He))?(?:_next)?$/.exec(symbol);
  if (coefficient) {
    const [, which, of = 'N2'] = coefficient;
    const gas = of === 'N2' ? 'nitrogen' : 'helium';
    const own = Object.fromEntries(
      Object.entries(timeline.compartments).map(([name, all]) => [name, Float64Array.from(all as Float64Array)]),
    ) as unknown as Compartments;
    const at = working.compartment! - 1;
    own[`${gas}${({ t_half: 'HalfTimeMin', a: 'A', b: 'B' } as const)[which as 'a']}`][at] = to;
    if (which === 't_half') own[`${gas}K`][at] = Math.log(2) / to;
    return { ...same, compartments: own };
  }
  const tension = /^P_(N2|He)/.exec(symbol);
  if (tension) {
    const line = lines.find((one) => one.startsWith('tissues'))!;
    const sets = line
      .slice('tissues: '.length)
      .split(', ')
      .map((set) => set.split(' '));
    sets[tension[1] === 'N2' ? 0 : 1]![working.compartment!] = String(to);
    return setting('tissues', sets.map((set) => set.join(' ')).join(', '));
  }
  if (setup && symbol === 'f_gauge') return { ...same, setup: { ...setup, depthScale: to } };
  switch (symbol) {
    case 'h':
      return setting('altitude', `${to} m`);
    case 'h_home':
      return setting(
        'arrived from',
        lines
          .find((line) => line.startsWith('arrived'))!
          .slice(14)
          .replace(/^[\d.]+/, String(to)),
      );
    case 't_ago':
      return setting('arrived from', `300 m, ${to} min ago`);
    case 'RQ':
      return setting('respiratory quotient', String(to));
    case 'v':
      return setting('plan ascent', `${to} m/min`);
    case 't_round':
      return setting('stop rounding', `${to * 60} s`);
  }
  const rule = RULES_BY_HAND[`${working.reading} ${symbol}`];
  if (!rule || !rules) throw new Error(`no edit is known for ${symbol} of ${working.reading}`);
  const [id, name] = rule;
  return { ...same, rules: { ...rules, [id]: { ...rules[id], [name]: to } } as RuleSettings };
}

const RULES_BY_HAND: Readonly<Record<string, readonly [keyof RuleSettings, string]>> = {
  'rate t_avg': ['rateWatch', 'averageS'],
  'safety-stop t_lasts': ['safetyStop', 'lastsS'],
  'safety-stop t_adds': ['longerSafetyStop', 'addsS'],
  'safety-stop t_most': ['longerSafetyStop', 'mostS'],
  'imposed-stop t_lasts': ['imposedStop', 'lastsS'],
  'imposed-stop t_most': ['imposedStop', 'mostS'],
  'tightened-limits n_most': ['tighterLimits', 'mostTimes'],
  'tightened-limits gf_floor': ['tighterLimits', 'floor'],
  'tightened-limits gf_by': ['tighterLimits', 'by'],
  'no-fly h_cabin': ['flyingWait', 'cabinM'],
  'no-fly h_guide': ['flyingWait', 'requiredStopsH'],
};

/** Numbers of publications and of practice, which no script says. */
const IN_THE_WORKING = new Set(['p_O2_limit', 'T', 'n_lung', 't_fade']);

/** Another number within what it may be, such as a script can say. */
function another(symbol: string, { value, unit, within }: WorkingValue, gauge = 1): number {
  const [least, most] = within!;
  const near =
    unit === 'm'
      ? ((Math.round((value / gauge) * 10) - 12) / 10) * gauge
      : /^[nb]_?/.test(symbol) && unit === '' && Number.isInteger(value)
        ? value - 1
        : value * 0.85;
  const inside = Math.min(most, Math.max(least, near));
  return inside === value ? (value === least ? least + (most - least) / 4 : least) : inside;
}

/** Asks every changeable number of every working of a place, and tells which were asked, leg numbers aside. */
function walk(
  script: string,
  momentS: number,
  asked: Set<string>,
  unit?: Required<Pick<With, 'setup' | 'rules'>>,
): void {
  const parsed = parseScript(script);
  if (!parsed.ok) throw new Error(parsed.errors[0]!.message);
  const { dive } = parsed;
  const { legs } = legsOf(dive);
  const leg = legs.findLastIndex(({ startS }) => startS <= momentS);
  const intoS = momentS - legs[leg]!.startS;
  const here = desk(script, leg, intoS, unit ?? {});
  for (const reading of unit ? UNIT_READING_IDS : READING_IDS) {
    if (/^tension-(?!3$)/.test(reading) || (unit && !OF_UNITS.has(reading))) continue;
    const working = here.working(reading);
    if (!working) continue;
    const place: Place = { script, timeline: here.timeline, leg, intoS, working, ...unit };
    const whatIf = whatIfOf(place, here, reading);
    for (const { why } of whatIf.fixed.values()) expect(why).toMatch(/\.$/);
    for (const [symbol, value] of whatIf.changeable) {
      const to = another(symbol, value, unit?.setup.depthScale);
      const said = whatIf.with(symbol, to);
      const name = `${reading} ${symbol} = ${to} for ${value.value} at ${momentS} s`;
      if (IN_THE_WORKING.has(symbol) || (symbol === 'h_guide' && value.from === 'published')) {
        expect(said, name).toBeUndefined();
        continue;
      }
      const { script: edited, intoS: then, ...other } = byHand(place, symbol, to);
      const own = desk(edited, leg, then, other).working(reading);
      if (!own || !said?.ok) {
        expect([name, said?.ok, said && !said.ok && said.what]).toEqual([
          name,
          own ? true : false,
          own ? undefined : 'Then this is not shown at that moment.',
        ]);
        continue;
      }
      expect([name, said.value.compartment, ...said.value.steps.map(({ id }) => id)]).toEqual([
        name,
        own.compartment,
        ...own.steps.map(({ id }) => id),
      ]);
      const apart = own.steps.flatMap(({ id, result: { value: due } }, index) => {
        const { value: got } = said.value.steps[index]!.result;
        const close = Object.is(got, due) || Math.abs(got - due) <= 1e-6 * Math.max(1, Math.abs(due));
        return close ? [] : [`${name}, ${id}: ${got} for ${due}`];
      });
      expect(apart).toEqual([]);
      asked.add(symbol.replace(/_\d+/, '_#'));
    }
  }
}

function whatIfOf(
  { script, leg, intoS, working }: Place,
  { timeline, watch }: Desk,
  reading: UnitReadingId,
): DiveAgain {
  const parsed = parseScript(script);
  if (!parsed.ok) throw new Error('no dive');
  const { dive } = parsed;
  const sample = sampleAt(timeline, timeline.legs[leg]!.startS + intoS + 1e-7);
  return watch
    ? diveAgain(
        { working, dive, script, timeline, sample, watch },
        {
          of: 'unit',
          working: (then, at) => unitWorkingFor(reading, { watch: then, sample: at }),
          sampling: () => ({ everyS: 5, intervalEveryS: 60 }),
        },
      )
    : diveAgain(
        { working, dive, script, timeline, sample },
        { of: 'model', working: (...then) => workingFor(reading as never, ...then) },
      );
}

/** What a unit has of its own: what its rules say, and the model's as it takes the dive to be. */
const OF_UNITS: ReadonlySet<UnitReadingId> = new Set([...RULE_READING_IDS, 'no-stop', 'time-to-surface']);

describe('what a working says with another number in it', () => {
  it('is what the desk says after the same edit, for every number of every working of the model', () => {
    const asked = new Set<string>();
    for (const [script, moments] of Object.entries(MOMENTS))
      for (const momentS of moments) walk(script, momentS, asked);
    expect([...asked].sort()).toEqual([
      ...['F_He', 'F_He_#', 'F_N2', 'F_N2_#', 'F_O2', 'F_O2_#', 'F_narc', 'P_He_#', 'P_N2_#', 'RQ'],
      ...[
        'a',
        'a_He',
        'a_He_next',
        'a_N2',
        'a_N2_next',
        'a_next',
        'b',
        'b_He',
        'b_He_next',
        'b_N2',
        'b_N2_next',
        'b_next',
      ],
      ...['d', 'd_#', 'd_#_end', 'gf', 'gf_high', 'gf_low', 'h', 'h_home', 't_#', 't_ago', 't_half_He', 't_half_N2'],
      ...['t_round', 'v'],
    ]);
  });

  it('is what a unit says after the same edit, for every number of its rules and of a gauge that reads wrong', () => {
    const rules = ruleSettingsSchema.parse({ imposedStop: { on: true }, tighterLimits: { on: true } });
    const asked = new Set<string>();
    const wrong = { ...SET_RIGHT, name: 'Reads deep', depthScale: 1.05 };
    for (const setup of [SET_RIGHT, wrong])
      for (const momentS of [2230, 2500]) walk(LEFT, momentS, asked, { setup, rules });
    expect([...asked].sort()).toEqual([
      ...[
        'F_He',
        'F_He_#',
        'F_N2',
        'F_N2_#',
        'P_He_#',
        'P_N2_#',
        'a_He',
        'a_N2',
        'b_He',
        'b_N2',
        'd',
        'd_#',
        'd_#_end',
      ],
      ...['f_gauge', 'gf_by', 'gf_floor', 'gf_high', 'n_most', 't_#', 't_avg', 't_half_He', 't_half_N2', 't_lasts'],
      ...['t_most', 'v'],
    ]);
  });
});
