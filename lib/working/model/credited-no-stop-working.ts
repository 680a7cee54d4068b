import { ascentStartAt } from '../../ascent/plan/ascent-start';
import { creditedNoStopMin } from '../../ascent/credited-no-stop';
import { NO_STOP_CAP_MIN } from '../../ascent/no-stop-cap';
import { startsAfter } from '../../ascent/plan/start-after';
import { fromSearch, fromSetting, newChain, quantity, type Chain } from '../chain';
import { coefficientSteps, inertStep } from '../steps/compartment-steps';
import type { Instant } from '../instant';
import type { WorkingLeg } from '../steps/leg-steps';
import { limitStep } from '../steps/limit-steps';
import { alongLegs, levelAmbientStep, levelFactor } from './way-up-steps';
import { siteSteps } from '../steps/pressure-steps';
import { REMARKS } from '../remarks';
import { nextLevel, requiredWait, type RequiredWait } from './required-wait';
import { sixteenTable } from '../steps/sixteen-table';
import { SOURCES } from '../sources';
import { hasHelium, tensionSteps } from '../steps/tension-steps';
import type { Named, Search, Working, WorkingTable } from '../working';
import { ALL_COMPARTMENTS } from '../../tissue/coefficients';

/** A stop is looked for this long after the last moment without one, min: more than that moment is exact to. */
const JUST_AFTER_MIN = 1e-5;
/** A margin further from nothing than this was not passed through but jumped over, bar. */
const JUMPED_BAR = 1e-5;

/**
 * Why the no-stop time is what it is when the gas lost on the way up is counted: the compartment that would first break
 * its limit at one of the levels of a direct ascent is taken through the stay and up to that level.
 */
export function creditedNoStopWorking(instant: Instant): Working {
  const { timeline, figures, sample } = instant;
  const start = ascentStartAt(timeline, figures, sample);
  const minutes = creditedNoStopMin(figures.limits, timeline, start);
  const stayMin = Math.min(minutes, NO_STOP_CAP_MIN);
  const then = later(instant, minutes === 0 || minutes === Infinity ? stayMin : stayMin + JUST_AFTER_MIN);
  const wait = requiredWait(then);
  const roomBar = ALL_COMPARTMENTS.map((c) => nextLevel(then, wait, c, 0).roomBar);
  const compartment = roomBar.indexOf(Math.min(...roomBar));
  const chain = newChain();
  const site = siteSteps(chain, timeline);
  const climbsOnHelium = [...wait.before, ...wait.onward].some(({ gas }) => gas.he > 0);
  const held = tensionSteps(chain, site, instant, compartment, climbsOnHelium || hasHelium(instant, compartment));
  const stay = fromSearch('t', {
    ...quantity(stayMin, 'min'),
    meaning: 'how much longer you stay',
  });
  const legs: WorkingLeg[] = [
    {
      name: 'stay',
      title: 'staying here',
      fromM: start.depthM,
      toM: start.depthM,
      minutes: stayMin,
      gas: start.gas,
      from: 'dive',
      planned: true,
      length: stay,
    },
    ...[...wait.before, ...wait.onward].map((part, index): WorkingLeg => ({
      ...part,
      name: `up${index + 1}`,
      title: 'on the way up',
      from: 'setting',
      planned: true,
    })),
  ];
  const arrived = alongLegs(chain, timeline, site, held, legs);
  const total = inertStep(chain, arrived, {
    id: 'step:arrived-inert',
    symbol: 'P_next',
    title: 'both gases in this compartment on arrival',
  });
  const pressure = levelAmbientStep(chain, timeline, site, wait.nextM);
  const limit = limitStep(
    chain,
    {
      id: 'step:next-limit',
      symbol: 'M_next',
      title: 'what this compartment tolerates there',
      why: 'On a direct ascent it must not hold more than this on arrival.',
    },
    pressure,
    levelFactor(chain, figures.limits, wait),
    coefficientSteps(chain, timeline, compartment, arrived, '_next'),
  );
  const over = total.value.value - limit.value.value;
  const search = lastSteps(chain, { total, limit, stay, minutes });
  // A line that moves meanwhile, or a ceiling that is above the diver already, is not in this compartment's figures.
  const jumped = minutes === 0 ? over < 0 : minutes < Infinity && Math.abs(over) > JUMPED_BAR;
  return {
    reading: 'credited-no-stop',
    title: 'No-stop time with credit for the way up',
    compartment: compartment + 1,
    answer: { ...quantity(minutes, 'min'), text: answerText(minutes, figures.noStopMin[sample]!) },
    steps: chain.steps,
    table: wayUpTable(then, wait, compartment),
    ...(jumped ? {} : { search }),
    cautions: [jumped ? REMARKS.stopJumps : REMARKS.stopSearch, ...(held.legsLeftOut > 0 ? [REMARKS.earlierLegs] : [])],
  };
}

function answerText(minutes: number, plainMin: number): string {
  // Deep, or on a slow way up, the credit is a debt.
  if (minutes < plainMin)
    return `${minutes === 0 ? 'None is left' : 'It is the shorter of the two'}: on the way up from here, at the plan’s rate, this compartment goes on taking up gas, so that a direct ascent breaks a limit while one in an instant would not.`;
  if (minutes === 0)
    return 'None is left: even counting the gas lost on the way up, this compartment would be past its limit.';
  if (minutes === Infinity)
    return 'As far as is looked ahead a direct ascent stays within every limit. This compartment comes nearest.';
  return 'Begun by then, a direct ascent at the plan’s rate keeps every limit, since some gas is lost on the way. Screens that show a no-stop time mostly give no such credit.';
}

function lastSteps(
  chain: Chain,
  { total, limit, stay, minutes }: { total: Named; limit: Named; stay: Named; minutes: number },
): Search {
  chain.add({
    id: 'step:over',
    title: 'how far past its limit the compartment is on arrival',
    why: 'The time sought is the one at which this is nothing.',
    expression: `${total.symbol} - M_next`,
    symbol: 'x_next',
    values: [total, limit],
    result: quantity(total.value.value - limit.value.value, 'bar'),
    source: SOURCES.arithmetic,
  });
  chain.add({
    id: 'step:credited',
    title: 'no-stop time with credit for the way up',
    why: 'The time found; without end if the limit is kept as far as the search looks.',
    expression: 't < t_end ? t : Infinity',
    symbol: 't_credited',
    values: [
      stay,
      fromSetting('t_end', { ...quantity(NO_STOP_CAP_MIN, 'min'), meaning: 'how far ahead the search looks' }),
    ],
    result: quantity(minutes, 'min'),
    source: SOURCES.arithmetic,
  });
  return { symbol: 't', until: 'step:over', fromMin: 0, horizonMin: NO_STOP_CAP_MIN };
}

function wayUpTable(then: Instant, wait: RequiredWait, compartment: number): WorkingTable {
  return sixteenTable(
    then.timeline,
    wait.minutes === 0
      ? 'Each compartment on a direct ascent begun then'
      : 'Each compartment on arrival where the direct ascent begun then fails',
    [
      { title: 'tension on arrival', unit: 'bar', of: (c) => nextLevel(then, wait, c, 0).tensionBar },
      { title: 'limit there', unit: 'bar', of: (c) => nextLevel(then, wait, c, 0).limitBar },
      { title: 'past its limit by', unit: 'bar', of: (c) => -nextLevel(then, wait, c, 0).roomBar },
    ],
    compartment,
  );
}

/** The same diver after some more minutes here, as a timeline of one sample. */
function later({ timeline, figures, sample }: Instant, minutes: number): Instant {
  const start = ascentStartAt(timeline, figures, sample);
  const { nitrogenBar, heliumBar, anchorM } = startsAfter(timeline, figures.limits.gradientFactors)(start, minutes);
  const only = <Samples extends { slice(from: number, to: number): Samples }>(samples: Samples) =>
    samples.slice(sample, sample + 1);
  return {
    timeline: {
      ...timeline,
      length: 1,
      timeS: only(timeline.timeS),
      depthM: only(timeline.depthM),
      ambientBar: only(timeline.ambientBar),
      leg: only(timeline.leg),
      nitrogenBar,
      heliumBar,
    },
    figures: { ...figures, anchorM: Float64Array.of(anchorM) },
    sample: 0,
  };
}
