import { breathedAt } from '../../ascent/breathed';
import { coefficientsOf, inertBarOf } from '../../ascent/ceiling';
import { loadAt } from '../../ascent/figures';
import { compartmentNoStopMin, surfaceMarginBar, type Breathed } from '../../ascent/no-stop';
import { NO_STOP_CAP_MIN } from '../../ascent/no-stop-cap';
import { gasAt, tissuesAt } from '../../dive/timeline';
import { haldane } from '../../tissue/loading';
import { limitBar } from '../../tissue/limit';
import { tissuesAfter } from '../../tissue/tissues';
import { deciding, fromSearch, fromSetting, newChain, quantity, type Chain } from '../chain';
import { coefficientSteps, inertStep } from '../steps/compartment-steps';
import type { Instant } from '../instant';
import { gradientFactor, surfaceLimitStep } from '../steps/limit-steps';
import { ambientStep, breathedStep, GAS_NAMES, siteSteps, type InertGas } from '../steps/pressure-steps';
import { REMARKS } from '../remarks';
import { sixteenTable } from '../steps/sixteen-table';
import { SOURCES } from '../sources';
import { tensionSteps, type Tension } from '../steps/tension-steps';
import type { Named, Search, Working } from '../working';
import { ALL_COMPARTMENTS } from '../../tissue/coefficients';

/** The engine's search with helium looks this far ahead, min. */
const HORIZON_MIN = NO_STOP_CAP_MIN + 1;

/** Why the no-stop time is what it is: the compartment that ends it, or the one that comes nearest where none ever will. */
export function noStopWorking(instant: Instant): Working {
  const { timeline, figures, sample } = instant;
  const { gradientFactors } = figures.limits;
  const minutes = figures.noStopMin[sample]!;
  const breathed = breathedAt(timeline, gasAt(timeline, sample), timeline.ambientBar[sample]!);
  const compartment = (figures.noStopLeader[sample] || nearestLater(instant, breathed)) - 1;
  const chain = newChain();
  const site = siteSteps(chain, timeline);
  const ambient = ambientStep(chain, site, instant);
  const nitrogenInLungs = breathedStep(chain, ambient, 'N2', instant);
  const tension = tensionSteps(chain, site, instant, compartment);
  const gf = gradientFactor(...gfHigh(gradientFactors));
  let search: Search | undefined;
  let decisive: readonly (readonly [Named, string])[];
  if (tension.helium) {
    const lungs = { N2: nitrogenInLungs, He: breathedStep(chain, ambient, 'He', instant) };
    ({ search, decisive } = mixedArrival(chain, instant, { compartment, site, tension, lungs, gf, minutes }));
  } else {
    const limit = surfaceLimitStep(chain, site.surface, gf, coefficientSteps(chain, timeline, compartment, tension));
    chain.add({
      id: 'step:no-stop',
      title: 'no-stop time',
      why: 'Haldane’s solution turned round: when the compartment reaches its limit. None is left if it is past it already; there is no end if what you breathe stays below it.',
      expression: 'P_N2 >= M_0 ? 0 : P_alv_N2 <= M_0 ? Infinity : log((P_alv_N2 - P_N2) / (P_alv_N2 - M_0)) / k_N2',
      symbol: 't_nostop',
      values: [tension.nitrogen, limit, nitrogenInLungs, tension.nitrogenK],
      result: quantity(minutes, 'min'),
      source: SOURCES.loading,
    });
    decisive = [
      [tension.nitrogen, 'held'],
      [nitrogenInLungs, 'in your lungs'],
      [limit, 'tolerated at the surface'],
    ];
  }
  const load = loadAt(timeline, sample);
  const cautions = [...(search ? [REMARKS.search] : []), ...(tension.legsLeftOut > 0 ? [REMARKS.earlierLegs] : [])];
  return {
    reading: 'no-stop',
    title: 'No-stop time',
    compartment: compartment + 1,
    answer: { ...quantity(minutes, 'min'), text: answerText(minutes) },
    deciding: deciding(chain, ...decisive),
    steps: chain.steps,
    table: sixteenTable(
      timeline,
      'When each compartment would reach its limit at the surface if you stayed at this depth on this gas',
      [
        { title: 'tension now', unit: 'bar', of: (c) => inertBarOf(load, c) },
        {
          title: 'limit at the surface',
          unit: 'bar',
          of: (c) => surfaceMarginBar(load, gradientFactors.high, c) + inertBarOf(load, c),
        },
        {
          title: 'no-stop time',
          unit: 'min',
          of: (c) => compartmentNoStopMin(load, breathed, gradientFactors.high, c),
        },
      ],
      compartment,
    ),
    ...(search ? { search } : {}),
    cautions,
  };
}

function gfHigh({ low, high }: { readonly low: number; readonly high: number }): Parameters<typeof gradientFactor> {
  return low === high ? ['gf', high] : ['gf_high', high, 'high'];
}

function answerText(minutes: number): string {
  if (minutes === 0)
    return 'No time is left: this compartment holds more than it tolerates at the surface, so you need to stop on the way up.';
  if (minutes === Infinity)
    return 'At this depth on this gas no compartment reaches its limit in the time looked ahead. This one comes nearest.';
  return 'When this time is up, this compartment reaches its limit at the surface. It is the first of the sixteen to do so.';
}

interface MixedGiven {
  readonly compartment: number;
  readonly site: ReturnType<typeof siteSteps>;
  readonly tension: Tension;
  readonly lungs: Readonly<Record<InertGas, Named>>;
  readonly gf: Named;
  readonly minutes: number;
}

/** With helium: tension and limit at the time found, the check that they meet, and the time. */
function mixedArrival(
  chain: Chain,
  instant: Instant,
  { compartment, site, tension, lungs, gf, minutes }: MixedGiven,
): { search: Search; decisive: readonly (readonly [Named, string])[] } {
  const { timeline } = instant;
  const laterMin = Math.min(minutes, HORIZON_MIN);
  const later = fromSearch('t', {
    ...quantity(laterMin, 'min'),
    meaning: 'time from now at which both sides meet',
  });
  const after = (of: InertGas, now: Named, k: Named) =>
    chain.add({
      id: `step:later-${of}`,
      title: `${GAS_NAMES[of]} in this compartment at that time`,
      why: 'At one depth the gap to the lungs shrinks by half in every half-time (Haldane).',
      expression: `P_alv_${of} + (P_${of} - P_alv_${of}) * exp(-k_${of} * t)`,
      symbol: `P_${of}_later`,
      values: [lungs[of], now, k, later],
      result: quantity(haldane(now.value.value, lungs[of].value.value, k.value.value, laterMin), 'bar'),
      source: SOURCES.loading,
    });
  const inert = {
    nitrogen: after('N2', tension.nitrogen, tension.nitrogenK),
    helium: after('He', tension.helium!, tension.heliumK!),
  };
  const total = inertStep(chain, inert, {
    id: 'step:later',
    symbol: 'P_later',
    title: 'both gases in this compartment at that time',
  });
  const limit = surfaceLimitStep(chain, site.surface, gf, coefficientSteps(chain, timeline, compartment, inert));
  chain.add({
    id: 'step:meeting',
    title: 'how far tension and limit are apart at that time',
    why: 'The time sought is the one at which this is nothing. Less than nothing means that the limit is not reached yet.',
    expression: 'P_later - M_0',
    symbol: 'x_later',
    values: [total, limit],
    result: quantity(total.value.value - limit.value.value, 'bar'),
    source: SOURCES.arithmetic,
  });
  chain.add({
    id: 'step:no-stop',
    title: 'no-stop time',
    why: 'The time found; without end if the compartment does not reach its limit as far as the search looks.',
    expression: 't < t_end ? t : Infinity',
    symbol: 't_nostop',
    values: [
      later,
      fromSetting('t_end', { ...quantity(HORIZON_MIN, 'min'), meaning: 'how far ahead the search looks' }),
    ],
    result: quantity(minutes, 'min'),
    source: SOURCES.arithmetic,
  });
  return {
    search: { symbol: 't', until: 'step:meeting', fromMin: 0, horizonMin: HORIZON_MIN },
    decisive: [
      [total, 'held by then'],
      [limit, 'tolerated at the surface'],
    ],
  };
}

/** The compartment (1–16) that comes nearest to its limit at the surface by the time the search ends. */
function nearestLater({ timeline, figures, sample }: Instant, breathed: Breathed): number {
  const { surfaceBar, compartments } = timeline;
  const later = tissuesAfter(tissuesAt(timeline, sample), compartments, breathed, HORIZON_MIN);
  const load = { ...loadAt(timeline, sample), ...later, at: 0 };
  const roomBar = ALL_COMPARTMENTS.map((c) => {
    const { a, b } = coefficientsOf(load, c);
    return limitBar(a, b, figures.limits.gradientFactors.high, surfaceBar) - inertBarOf(load, c);
  });
  return roomBar.indexOf(Math.min(...roomBar)) + 1;
}
