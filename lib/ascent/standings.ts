import { sampleAt, type Timeline } from '../dive/timeline';
import { COMPARTMENTS } from '../tissue/coefficients';
import { ascentStartAt } from './plan/ascent-start';
import { breathedAt } from './breathed';
import { ceilingAtGf, ceilingOnLine, type Load } from './ceiling';
import type { Figures } from './figures';
import { leastOf, mostOf } from './gas-path';
import { ascentPlanner, type AscentStart, type Schedule } from './plan/schedule';
import { startsAfter } from './plan/start-after';
import { needsStop, stopStateOf, type StopState } from './stop-state';
import { surelyFree } from './surely-free';
import { emptyTissues } from '../tissue/tissues';

/** How a diver stands, and the depth of the first stop, m; 0 where the way up needs none. */
export interface Standing {
  readonly state: StopState;
  readonly stopM: number;
}

/** How the diver of a timeline stands at any instant, and whether it can be told to stay so. */
export interface Standings {
  at(timeS: number): Standing;
  /**
   * Whether nothing else is between two instants of one leg at which the diver stands alike. Where it isn't told, it may
   * be so all the same.
   */
  staysBetween(fromS: number, toS: number, standing: Standing): boolean;
}

/**
 * The standings of a timeline. Between two instants they are told to stay if the plan's way up begins alike with the most
 * that every compartment holds of each gas meanwhile, under the shallowest anchor, and with the least, under the deepest,
 * from either depth: with nitrogen on one line more gas never opens a way. With helium the limits move with the mixture,
 * and with low < high an anchor may be let go on the way up: there it is no proof, and should be asked of short pieces.
 */
export function standingsAlong(timeline: Timeline, figures: Figures): Standings {
  const planAscent = ascentPlanner(figures.limits, timeline);
  const { gradientFactors } = figures.limits;
  const isSurelyFree = surelyFree(timeline, figures.limits);
  const after = startsAfter(timeline, gradientFactors);
  const { compartments, surfaceBar, barPerMetre } = timeline;
  const load = ({ nitrogenBar, heliumBar, at }: AscentStart): Load => ({
    compartments,
    nitrogenBar,
    heliumBar,
    at,
    surfaceBar,
    barPerMetre,
  });
  const startOf = (timeS: number) => startAt(timeline, figures, after, sampleAt(timeline, timeS), timeS);
  const breathed = ({ depthM, gas }: AscentStart) => breathedAt(timeline, gas, surfaceBar + depthM * barPerMetre);
  const most = emptyTissues();
  const least = emptyTissues();

  /** Fills in the bounds of every tension on the way from one start to another, at most a leg apart. */
  function bound(start: AscentStart, toS: number): AscentStart {
    const from = { ...start, ...copied(start), at: 0 };
    const to = startOf(toS);
    const [before, now] = [breathed(from), breathed(to)];
    for (let c = 0; c < COMPARTMENTS; c += 1) {
      const n = [from.nitrogenBar[c]!, to.nitrogenBar[to.at + c]!, before.nitrogenBar, now.nitrogenBar] as const;
      const h = [from.heliumBar[c]!, to.heliumBar[to.at + c]!, before.heliumBar, now.heliumBar] as const;
      most.nitrogenBar[c] = mostOf(...n);
      least.nitrogenBar[c] = leastOf(...n);
      most.heliumBar[c] = mostOf(...h);
      least.heliumBar[c] = leastOf(...h);
    }
    return to;
  }

  function staysBetween(fromS: number, toS: number, standing: Standing): boolean {
    const from = startOf(fromS);
    const { depthM: fromM, anchorM: fromAnchorM } = from;
    const to = bound(from, toS);
    const ceiling = standing.state === 'owed' || standing.state === 'clearing';
    const isBound = ceilingAtGf(load({ ...to, ...(ceiling ? least : most), at: 0 }), gradientFactors.high).depthM > 0;
    if (isBound !== ceiling) return false;
    const fullest = { ...to, ...most, at: 0, anchorM: Math.min(fromAnchorM, to.anchorM) };
    const emptiest = { ...to, ...least, at: 0, anchorM: Math.max(fromAnchorM, to.anchorM) };
    if (standing.state === 'free' && isSurelyFree({ ...fullest, depthM: Math.max(fromM, to.depthM) })) return true;
    const depths = fromM === to.depthM ? [fromM] : [fromM, to.depthM];
    return depths.every((depthM) => {
      const alike = (start: AscentStart) =>
        firstStopM(planAscent({ ...start, depthM }, gradientFactors, true)) === standing.stopM;
      return alike(fullest) && alike(emptiest);
    });
  }

  function at(timeS: number): Standing {
    const sample = sampleAt(timeline, timeS);
    const start = startOf(timeS);
    const ceilingM =
      timeS === timeline.timeS[sample]
        ? figures.ceilingM[sample]!
        : ceilingOnLine(load(start), gradientFactors, start.anchorM).depthM;
    if (ceilingM === 0 && isSurelyFree(start)) return { state: 'free', stopM: 0 };
    const schedule = planAscent(start, gradientFactors, true);
    return { state: stopStateOf(ceilingM, needsStop(schedule)), stopM: firstStopM(schedule) };
  }

  return { at, staysBetween };
}

const firstStopM = ({ stops }: Schedule) => stops[0]?.depthM ?? 0;

type Tensions = Pick<AscentStart, 'nitrogenBar' | 'heliumBar'>;

/** The tensions of a start, safe from being written over by the next one. */
function copied({ nitrogenBar, heliumBar, at }: AscentStart): Tensions {
  return {
    nitrogenBar: nitrogenBar.slice(at, at + COMPARTMENTS),
    heliumBar: heliumBar.slice(at, at + COMPARTMENTS),
  };
}

/** Where an ascent begun at an instant, at a sample or after it, is planned from. */
function startAt(
  timeline: Timeline,
  figures: Figures,
  after: ReturnType<typeof startsAfter>,
  sample: number,
  timeS: number,
): AscentStart {
  const start = ascentStartAt(timeline, figures, sample);
  const minutes = (timeS - timeline.timeS[sample]!) / 60;
  if (!(minutes > 0)) return start;
  const { startS, endS, fromM, toM } = timeline.legs[timeline.leg[sample]!]!;
  return after(start, minutes, fromM === toM ? toM : fromM + ((toM - fromM) * (timeS - startS)) / (endS - startS));
}
