import type { AscentPart } from '../../ascent/plan/schedule';
import { deciding, fromDive, fromSearch, fromSetting, newChain, quantity, type Chain } from '../chain';
import { coefficientSteps, inertStep, type Inert } from '../steps/compartment-steps';
import type { Instant } from '../instant';
import type { WorkingLeg } from '../steps/leg-steps';
import { limitStep } from '../steps/limit-steps';
import { siteSteps, type Site } from '../steps/pressure-steps';
import { REMARKS } from '../remarks';
import { compartmentWaitMin, nextLevel, requiredWait, WAIT_HORIZON_MIN, type RequiredWait } from './required-wait';
import { sixteenTable } from '../steps/sixteen-table';
import { SOURCES } from '../sources';
import { hasHelium, tensionSteps, type Tension } from '../steps/tension-steps';
import { alongLegs, levelAmbientStep, levelFactor } from './way-up-steps';
import type { Named, Search, Working } from '../working';

/** Minutes nearer than this are whole. */
const ROUNDING_MIN = 1e-6;

/**
 * Why the first stop of the way up lasts as long as it does: the compartment that decides is taken to the stop, through
 * the wait and on to the next level, where it has to be within its limit. Without a stop, straight to the surface.
 */
export function requiredStopWorking(instant: Instant): Working {
  const { timeline } = instant;
  const wait = requiredWait(instant);
  const { compartment, minutes } = wait;
  const chain = newChain();
  const site = siteSteps(chain, timeline);
  const climbsOnHelium = [...wait.before, ...wait.onward].some(({ gas }) => gas.he > 0) || wait.gas.he > 0;
  const held = tensionSteps(chain, site, instant, compartment, climbsOnHelium || hasHelium(instant, compartment));
  const arrived = climbSteps(chain, site, instant, held, wait);
  const coefficients = coefficientSteps(chain, timeline, compartment, arrived, '_next');
  const total = inertStep(chain, arrived, {
    id: 'step:arrived-inert',
    symbol: 'P_next',
    title: 'both gases in this compartment on arrival at the next level',
  });
  const pressure = levelAmbientStep(chain, timeline, site, wait.nextM);
  const limit = limitStep(
    chain,
    {
      id: 'step:next-limit',
      symbol: 'M_next',
      title: 'what this compartment tolerates at the next level',
      why: 'On arrival it must not hold more than this.',
    },
    pressure,
    levelFactor(chain, instant.figures.limits, wait),
    coefficients,
  );
  chain.add({
    id: 'step:room',
    title: 'room left on arrival at the next level',
    why: 'Less than nothing means that you may not climb yet.',
    expression: `M_next - ${total.symbol}`,
    symbol: 'x_next',
    values: [limit, total],
    result: quantity(limit.value.value - total.value.value, 'bar'),
    source: SOURCES.arithmetic,
  });
  const search = minutes === 0 ? undefined : lastSteps(chain, instant, wait);
  if (minutes === 0) directStep(chain, instant, limit, total);
  return {
    reading: 'required-stop',
    title: 'Required stop',
    compartment: compartment + 1,
    answer: {
      ...quantity(minutes, 'min'),
      text: answerText(wait),
      ...(minutes === 0 ? {} : { at: quantity(wait.depthM, 'm') }),
    },
    deciding: deciding(chain, [total, 'held on arrival at the next level'], [limit, 'tolerated there']),
    steps: chain.steps,
    table: sixteenTable(
      timeline,
      minutes === 0
        ? 'Each compartment on a direct ascent'
        : 'Each compartment if you left the stop at once, and how long it alone would have you wait',
      [
        {
          title: 'tension on arrival at the next level',
          unit: 'bar',
          of: (c) => nextLevel(instant, wait, c, 0).tensionBar,
        },
        { title: 'limit there', unit: 'bar', of: (c) => nextLevel(instant, wait, c, 0).limitBar },
        { title: 'wait', unit: 'min', of: (c) => compartmentWaitMin(instant, wait, c) },
      ],
      compartment,
    ),
    ...(search ? { search } : {}),
    cautions: [
      ...(search ? [REMARKS.stopSearch] : []),
      ...(wait.searchedFromMin > 0 ? [REMARKS.fillsUp] : []),
      ...(held.legsLeftOut > 0 ? [REMARKS.earlierLegs] : []),
    ],
  };
}

function answerText({ minutes, arrivalDecides }: RequiredWait): string {
  if (minutes === 0)
    return 'No stop is required: on a direct ascent every compartment stays within its limit. This one comes nearest to it.';
  if (minutes === Infinity)
    return 'However long you wait here on this gas, this compartment would be past its limit at the next level.';
  if (!arrivalDecides)
    return 'The line asks for more on the way to the next level than on arrival there: until this time is up, climbing on would pass it.';
  return 'Until this time is up, climbing on would take this compartment past its limit at the next level.';
}

/** Takes what the compartment holds now to the stop, through the wait and up to the next level. */
function climbSteps(chain: Chain, site: Site, { timeline }: Instant, held: Tension, wait: RequiredWait): Inert {
  const leg = (part: AscentPart, name: string, title: string): WorkingLeg => ({
    ...part,
    name,
    title,
    from: 'setting',
    planned: true,
  });
  const legs: WorkingLeg[] = [
    ...wait.before.map((part, index) => leg(part, `to${index + 1}`, 'on the way to the stop')),
    ...(wait.minutes === 0
      ? []
      : [
          {
            ...leg({ fromM: wait.depthM, toM: wait.depthM, minutes: wait.exactMin, gas: wait.gas }, 'stop', 'the stop'),
            length: exactWait(wait),
          },
        ]),
    ...wait.onward.map((part, index) =>
      leg(part, `on${index + 1}`, wait.minutes === 0 ? 'on the way to the surface' : 'on to the next level'),
    ),
  ];
  return alongLegs(chain, timeline, site, held, legs);
}

function exactWait({ exactMin, arrivalDecides }: RequiredWait): Named {
  if (!arrivalDecides)
    return fromDive('t', {
      ...quantity(exactMin, 'min'),
      meaning: 'how long the schedule waits here: the line asks for more on the way than on arrival at the next level',
    });
  return fromSearch('t', {
    ...quantity(exactMin, 'min'),
    meaning: 'least wait after which the climb on is tolerated',
  });
}

function lastSteps(chain: Chain, { figures }: Instant, wait: RequiredWait): Search | undefined {
  const { stopRoundingMin } = figures.limits.plan;
  // A stop's minutes count from arrival: the one under way is partly over.
  const overMin = wait.minutes === Infinity ? 0 : stopRoundingMin - (wait.minutes % stopRoundingMin || stopRoundingMin);
  const isUnderWay = overMin > ROUNDING_MIN && overMin < stopRoundingMin - ROUNDING_MIN;
  const over = isUnderWay
    ? [fromDive('t_over', { ...quantity(overMin, 'min'), meaning: 'what is over of the stop’s minute under way' })]
    : [];
  chain.add({
    id: 'step:required-stop',
    title: 'required stop',
    why: 'Rounded up to whole multiples of the stop rounding, counted from arrival at the stop; without end if no wait as far as the search looks is enough.',
    expression: isUnderWay
      ? 't < t_end ? ceil((t_over + t) / t_round) * t_round - t_over : Infinity'
      : 't < t_end ? ceil(t / t_round) * t_round : Infinity',
    symbol: 't_stop',
    values: [
      exactWait(wait),
      ...over,
      fromSetting('t_end', { ...quantity(WAIT_HORIZON_MIN, 'min'), meaning: 'how far ahead the search looks' }),
      fromSetting('t_round', {
        ...quantity(stopRoundingMin, 'min'),
        meaning: 'stops are whole multiples of this',
        within: [0.01, 5],
      }),
    ],
    result: quantity(wait.minutes, 'min'),
    source: SOURCES.schedule,
  });
  if (!wait.arrivalDecides) return undefined;
  return { symbol: 't', until: 'step:room', fromMin: wait.searchedFromMin, horizonMin: WAIT_HORIZON_MIN };
}

function directStep(chain: Chain, { figures }: Instant, limit: Named, total: Named): void {
  chain.add({
    id: 'step:required-stop',
    title: 'required stop',
    why: 'None while the compartment is tolerated on arrival; otherwise at least one unit of stop somewhere on the way. Every level is tried like this; the surface is shown.',
    expression: `${total.symbol} <= M_next ? 0 : t_round`,
    symbol: 't_stop',
    values: [
      total,
      limit,
      fromSetting('t_round', {
        ...quantity(figures.limits.plan.stopRoundingMin, 'min'),
        meaning: 'stops are whole multiples of this',
        within: [0.01, 5],
      }),
    ],
    result: quantity(0, 'min'),
    source: SOURCES.schedule,
  });
}
