import published from '../../../content/published/oxygen.json';
import { oxygenExposureOf } from '../../exposure/oxygen-exposure';
import { pulmonaryRate } from '../../exposure/oxygen-rates';
import { fromDive, fromPublished, newChain, quantity, type Chain } from '../chain';
import type { Instant } from '../instant';
import { isLevel, legPressureStep, legTime, oxygenLegsNow, oxygenTable, type OxygenLeg } from './oxygen-leg-steps';
import { nothingCounts } from './oxygen-limit-steps';
import { siteSteps, type Site } from '../steps/pressure-steps';
import { REMARKS } from '../remarks';
import { SOURCES } from '../sources';
import { sumSteps } from '../steps/sum-steps';
import type { Named, Working } from '../working';

const rate = pulmonaryRate();
const exponent = fromPublished('n_lung', {
  ...quantity(published.exponent.diving, ''),
  meaning: 'exponent of the pulmonary dose',
  obtained: 'from memory',
  within: [0.5, 2],
});

/** Why the lungs have taken so many units of oxygen dose. */
export function pulmonaryOxygenWorking(instant: Instant): Working {
  const { timeline, sample } = instant;
  const exposure = oxygenExposureOf(timeline);
  const { legs, first, leftOut } = oxygenLegsNow(timeline, sample);
  const chain = newChain();
  const site = siteSteps(chain, timeline);
  const beforeUnits = exposure.legs.slice(0, first).reduce((sum, { pulmonaryUnits }) => sum + pulmonaryUnits, 0);
  const before = fromDive('U_before', {
    ...quantity(beforeUnits, 'units'),
    meaning: 'units taken before the legs worked through here',
  });
  // At the surface the air breathed holds less oxygen than counts, unless the surface is far below the sea’s.
  const terms = [
    before,
    ...legs
      .filter(({ startBar, endBar }) => Math.max(startBar, endBar) > nothingCounts.value.value)
      .map((one) => doseStep(chain, site, one)),
  ];
  const units = exposure.pulmonaryUnits[sample]!;
  sumSteps(
    chain,
    terms,
    {
      id: 'units',
      symbol: 'U',
      title: 'units of pulmonary oxygen dose',
      why: 'A unit is a minute at one atmosphere of oxygen. They add up and are not taken to fade.',
      unit: 'units',
    },
    units,
  );
  return {
    reading: 'oxygen-pulmonary',
    title: 'Oxygen, pulmonary dose',
    answer: {
      ...quantity(units, 'units'),
      text: 'What the lungs have taken since the script began, if its exponent holds for them.',
    },
    steps: chain.steps,
    table: oxygenTable(legs, (one) => rate.over(one.startBar, one.endBar, one.leg.minutes), 'units added', 'units'),
    cautions: [REMARKS.nothingCounts, ...(leftOut ? [REMARKS.earlierOxygen] : [])],
  };
}

/** What one leg adds: at one pressure the rate times the time; while it changes evenly, the rate's integral. */
function doseStep(chain: Chain, site: Site, one: OxygenLeg): Named {
  const { leg, startBar, endBar } = one;
  const time = legTime(one);
  const level = isLevel(one);
  const pressure = (at: '' | 'end', depthM: number, bar: number) =>
    legPressureStep(chain, site, one, { depthM, bar, at });
  const common = {
    id: `step:units-${leg.name}`,
    title: `units added: ${leg.title}`,
    symbol: `U_${leg.name}`,
    result: quantity(rate.over(startBar, endBar, leg.minutes), 'units'),
    source: SOURCES.oxygen,
    group: 'history',
  } as const;
  if (level) {
    const p = pressure('', (leg.fromM + leg.toM) / 2, (startBar + endBar) / 2);
    return chain.add({
      ...common,
      why: 'Each minute counts by how far the pressure is above half an atmosphere.',
      expression: `${time.symbol} * (max(0, ${p.symbol} - p_none) / p_none) ^ n_lung`,
      values: [time, p, nothingCounts, exponent],
    });
  }
  const start = pressure('', leg.fromM, startBar);
  const end = pressure('end', leg.toM, endBar);
  const power = ({ symbol }: Named) => `(max(0, ${symbol} - p_none) / p_none) ^ (n_lung + 1)`;
  return chain.add({
    ...common,
    why: 'While the pressure changes evenly, the minutes of the way add up to this integral.',
    expression: `${time.symbol} * p_none * (${power(end)} - ${power(start)}) / ((n_lung + 1) * (${end.symbol} - ${start.symbol}))`,
    values: [time, nothingCounts, end, start, exponent],
  });
}
