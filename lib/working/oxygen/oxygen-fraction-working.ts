import type { ExposureRate } from '../../exposure/exposure-rate';
import { oxygenExposureOf, SURFACE_HALF_TIME_MIN, type OxygenExposure } from '../../exposure/oxygen-exposure';
import { dailyExposureRate, NOTHING_COUNTS_BAR, singleExposureRate } from '../../exposure/oxygen-rates';
import { fromDive, fromPractice, fromSetting, newChain, quantity, type Chain } from '../chain';
import type { Instant } from '../instant';
import { isLevel, legPressureStep, legTime, oxygenLegsNow, oxygenTable, type OxygenLeg } from './oxygen-leg-steps';
import {
  isBetweenRows,
  limitAtStep,
  nothingCounts,
  rowValues,
  stretchesBetween,
  wholeStretch,
  type OxygenLimit,
  type Stretch,
} from './oxygen-limit-steps';
import { siteSteps, type Site } from '../steps/pressure-steps';
import { REMARKS } from '../remarks';
import { SOURCES } from '../sources';
import { sumSteps } from '../steps/sum-steps';
import type { Named, Working } from '../working';

const RATES: Readonly<Record<OxygenLimit, ExposureRate>> = { single: singleExposureRate, daily: dailyExposureRate };

/** Why so much of the limit for a single exposure to oxygen has been used. */
export function singleOxygenWorking(instant: Instant): Working {
  return fractionWorking(instant, 'single');
}

/** Why so much of the limit for 24 hours has been used. */
export function dailyOxygenWorking(instant: Instant): Working {
  return fractionWorking(instant, 'daily');
}

function fractionWorking(instant: Instant, of: OxygenLimit): Working {
  const { timeline, sample } = instant;
  const exposure = oxygenExposureOf(timeline);
  const { legs, first, leftOut } = oxygenLegsNow(timeline, sample);
  const chain = newChain();
  const site = fixedSite(instant);
  const before = fromDive('x_before', {
    ...quantity(startedWith(exposure, instant, first, of), ''),
    meaning: 'fraction used before the legs worked through here',
  });
  const answer = (of === 'single' ? exposure.singleFraction : exposure.dailyFraction)[sample]!;
  const terms =
    of === 'single'
      ? fadingTerms(chain, site, legs, before)
      : [before, ...legs.filter(({ interval }) => !interval).flatMap((one) => usedSteps(chain, site, one, of))];
  const used = terms.reduce((sum, { value }) => sum + value.value, 0);
  const forgotten = of === 'daily' ? used - answer : 0;
  const title = of === 'single' ? 'fraction of the single-exposure limit used' : 'fraction of the 24-hour limit used';
  const why = 'A time that is one tenth of the limit at its pressure uses one tenth of it, and the parts add up.';
  // Only what is older than a day is forgotten; less than rounding leaves behind is nothing.
  if (forgotten > 1e-12) {
    const all = sumSteps(
      chain,
      terms,
      { id: 'used-in-all', symbol: 'x_all', title: 'fraction used since the script began', why, unit: '' },
      used,
    );
    chain.add({
      id: 'step:used',
      title,
      why: 'The limit is for 24 hours: what was used before them no longer counts.',
      expression: 'x_all - x_old',
      symbol: 'x_daily',
      values: [all, fromDive('x_old', { ...quantity(forgotten, ''), meaning: 'fraction used more than 24 hours ago' })],
      result: quantity(answer, ''),
      source: SOURCES.oxygen,
    });
  } else {
    sumSteps(chain, terms, { id: 'used', symbol: `x_${of}`, title, why, unit: '' }, answer);
  }
  return {
    reading: of === 'single' ? 'oxygen-single' : 'oxygen-daily',
    title: of === 'single' ? 'Oxygen, of the single-exposure limit' : 'Oxygen, of the 24-hour limit',
    answer: {
      ...quantity(answer, ''),
      text: 'One would be the whole published limit. People differ in how much oxygen they bear, and the same person from day to day.',
    },
    steps: chain.steps,
    table: oxygenTable(legs, (one) => RATES[of].over(one.startBar, one.endBar, one.leg.minutes), 'fraction used', ''),
    cautions: [
      REMARKS.nothingCounts,
      ...(leftOut ? [REMARKS.earlierOxygen] : []),
      ...(exposure.beyondLimits ? [REMARKS.beyondTable] : []),
    ],
  };
}

/** Which rows of the table apply is settled by the pressures, so the site's own are not for changing here. */
function fixedSite({ timeline }: Instant): Site {
  return {
    surface: fromSetting('p_surface', { ...quantity(timeline.surfaceBar, 'bar'), meaning: 'pressure at the surface' }),
    water: fromSetting('w', {
      ...quantity(timeline.barPerMetre, 'bar/m'),
      meaning: siteSteps(newChain(), timeline).water.value.meaning,
    }),
  };
}

function startedWith(exposure: OxygenExposure, { timeline }: Instant, first: number, of: OxygenLimit): number {
  if (first === 0) return 0;
  if (of === 'daily') return exposure.legs.slice(0, first).reduce((sum, { daily }) => sum + daily, 0);
  return exposure.singleFraction[timeline.leg.indexOf(first)]!;
}

/** The single exposure fades at the surface: what there was before an interval is added up and halved with time. */
function fadingTerms(chain: Chain, site: Site, legs: readonly OxygenLeg[], before: Named): Named[] {
  let terms = [before];
  for (const one of legs) {
    if (!one.interval) {
      terms.push(...usedSteps(chain, site, one, 'single'));
      continue;
    }
    const { name, title } = one.leg;
    const total = terms.reduce((sum, { value }) => sum + value.value, 0);
    const sum = sumSteps(
      chain,
      terms,
      {
        id: `used-until-${name}`,
        symbol: `x_until_${name}`,
        title: `fraction used before: ${title}`,
        why: 'What the dive has used, added up.',
        unit: '',
        group: 'history',
      },
      total,
    );
    terms = [
      chain.add({
        id: `step:faded-${name}`,
        title: `what is left of it at the end: ${title}`,
        why: 'At the surface it is commonly taken to halve in every so many minutes.',
        expression: `${sum.symbol} * 2 ^ (-t_${name} / t_fade)`,
        symbol: `x_faded_${name}`,
        values: [
          sum,
          legTime(one),
          fromPractice('t_fade', {
            ...quantity(SURFACE_HALF_TIME_MIN, 'min'),
            meaning: 'half-time in which it fades at the surface',
            within: [1, 1440],
          }),
        ],
        result: quantity(total * 2 ** (-one.leg.minutes / SURFACE_HALF_TIME_MIN), ''),
        source: SOURCES.oxygenFading,
        group: 'history',
      }),
    ];
  }
  return terms;
}

function usedSteps(chain: Chain, site: Site, one: OxygenLeg, of: OxygenLimit): Named[] {
  const { leg, startBar, endBar } = one;
  const time = legTime(one);
  if (isLevel(one)) {
    const bar = (startBar + endBar) / 2;
    const [stretch] = stretchesBetween(bar, bar) as [Stretch];
    const pressure = legPressureStep(chain, site, one, {
      depthM: (leg.fromM + leg.toM) / 2,
      bar,
      at: '',
    });
    const limit = limitAtStep(chain, of, RATES[of], pressure, stretch, {
      name: leg.name,
      symbol: `L_${leg.name}`,
      title: `at that pressure: ${leg.title}`,
    });
    return [
      chain.add({
        id: `step:used-${leg.name}`,
        title: `fraction of the limit used: ${leg.title}`,
        why: 'The time spent, as a part of the longest exposure.',
        expression: `${time.symbol} / ${limit.symbol}`,
        symbol: `x_${leg.name}`,
        values: [time, limit],
        result: quantity(RATES[of].over(startBar, endBar, leg.minutes), ''),
        source: SOURCES.oxygen,
        group: 'history',
      }),
    ];
  }
  const start = legPressureStep(chain, site, one, {
    depthM: leg.fromM,
    bar: startBar,
    at: '',
  });
  const end = legPressureStep(chain, site, one, {
    depthM: leg.toM,
    bar: endBar,
    at: 'end',
  });
  const [low, high] = startBar < endBar ? [start, end] : [end, start];
  const stretches = stretchesBetween(low.value.value, high.value.value);
  return stretches.map((stretch, index) => {
    const name = `${leg.name}_${index + 1}`;
    const edge = (bar: number, which: 'low' | 'high') =>
      edgeOf(
        chain,
        of,
        stretch,
        bar,
        bar === low.value.value ? low : bar === high.value.value ? high : undefined,
        `${name}_${which}`,
      );
    const from = edge(stretch.fromBar, 'low');
    const to = edge(stretch.toBar, 'high');
    const minutes = (leg.minutes * (stretch.toBar - stretch.fromBar)) / Math.abs(endBar - startBar);
    const share = `${time.symbol} * (${to.pressure.symbol} - ${from.pressure.symbol}) / (${high.symbol} - ${low.symbol})`;
    const values = [time, from.pressure, to.pressure, low, high, ...(from.limit ? [from.limit] : []), to.limit!];
    const even = isBetweenRows(stretch);
    const equal =
      even && rowValues(stretch.row, of).limit.value.value === rowValues(stretch.row + 1, of).limit.value.value;
    return chain.add({
      id: `step:used-${leg.name}-${index + 1}`,
      title: `fraction of the limit used${stretches.length > 1 ? `, part ${index + 1}` : ''}: ${leg.title}`,
      why: even
        ? 'The pressure changes evenly and the limit with it, so the parts of it add up to a logarithm.'
        : 'The pressure changes evenly and the rate with it, so the mean of both ends counts.',
      expression: even
        ? equal
          ? `${share} / ${to.limit!.symbol}`
          : `${share} * log(${to.limit!.symbol} / ${from.limit!.symbol}) / (${to.limit!.symbol} - ${from.limit!.symbol})`
        : `${share} * (${from.limit ? `1 / ${from.limit.symbol} + ` : ''}1 / ${to.limit!.symbol}) / 2`,
      symbol: `x_${name}`,
      values: unique(equal ? values.filter((value) => value !== from.limit) : values),
      result: quantity(RATES[of].over(stretch.fromBar, stretch.toBar, minutes), ''),
      source: SOURCES.oxygenBetweenRows,
      group: 'history',
    });
  });
}

interface Edge {
  readonly pressure: Named;
  /** Nothing where the limit is without end. */
  readonly limit?: Named;
}

/** One end of a stretch: an end of the leg, with the limit read there, or a row of the table. */
function edgeOf(
  chain: Chain,
  of: OxygenLimit,
  stretch: Stretch,
  bar: number,
  end: Named | undefined,
  name: string,
): Edge {
  if (!end) {
    const row = bar === wholeStretch(stretch).fromBar ? stretch.row : stretch.row + 1;
    return row < 0 ? { pressure: nothingCounts } : rowValues(row, of);
  }
  if (bar <= NOTHING_COUNTS_BAR) return { pressure: end };
  return {
    pressure: end,
    limit: limitAtStep(chain, of, RATES[of], end, stretch, {
      name: name.replaceAll('_', '-'),
      symbol: `L_${name}`,
      title: 'at an end of this stretch',
    }),
  };
}

function unique(values: readonly Named[]): Named[] {
  return [...new Map(values.map((value) => [value.symbol, value])).values()];
}
