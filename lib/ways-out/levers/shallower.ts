import { ScriptPage } from '../../dive/script/page';
import { sayDepth } from '../../quantity/depth';
import type { UnitSystem } from '../../quantity/unit-system';
import { bottomOf, levelsOf, type Day, type DiveSteps } from '../day';
import { finished, holdDepth, setDepth } from '../changes';
import { depthFigure, depthGridM, depthUnit, gridUpwards, type Lever, type Try } from '../lever';
import { DUST, stepsIn } from '../../quantity/rounding';

/** Shallower than this a dive is none, m. */
const SHALLOWEST_M = 3;
/** Depths this near are one level, m. */
const SAME_LEVEL_M = 0.05;

/** The deepest level is not so deep; what lies above it stays as it was. */
export const deepestShallower: Lever = {
  id: 'deepest-shallower',
  title: 'Stay shallower at the deepest level',
  avoids: ['stop', 'ceiling'],
  range({ day, dive }) {
    const { maxDepthM } = dive;
    const { system } = day;
    const levels = levelsOf(dive).map(({ toM }) => toM);
    const nextM = Math.max(SHALLOWEST_M, ...levels.filter((depthM) => depthM < maxDepthM - SAME_LEVEL_M));
    function* tries(): Generator<Try> {
      for (const toM of gridUpwards(maxDepthM, nextM, system)) {
        const by = sayDepth(maxDepthM - toM, system);
        yield {
          to: depthFigure(toM, system),
          doing: `Going no deeper than ${sayDepth(toM, system)}`,
          cost: `${by} less depth at the deepest`,
          script: () => heldAbove(day, dive, toM),
        };
      }
    }
    const more = nextM > SHALLOWEST_M ? `, where the next level lies` : '';
    return {
      from: depthFigure(maxDepthM, system),
      unit: depthUnit(system),
      tries: tries(),
      even: `Even going no deeper than ${sayDepth(nextM, system)}${more}`,
    };
  },
};

/** Nowhere deeper than a depth: what went on below it goes on there, as long. */
function heldAbove(day: Day, dive: DiveSteps, limitM: number): string | undefined {
  const page = new ScriptPage(day.script);
  for (const { step, fromM, toM, startS, endS } of [...dive.legs].reverse()) {
    if (fromM === toM) continue;
    if (Math.min(fromM, toM) > limitM - DUST) holdDepth(page, step, endS - startS);
    else if (toM > limitM) setDepth(page, step, limitM, day.system);
  }
  return finished(page);
}

/** All levels move up together. */
export const everyLevelShallower: Lever = {
  id: 'every-level-shallower',
  title: 'Stay shallower at every level',
  avoids: ['stop', 'ceiling'],
  range({ day, dive }) {
    const { maxDepthM } = dive;
    const { system } = day;
    const ends = bottomOf(dive).filter(({ toM, fromM }) => toM !== fromM);
    const shallowestM = Math.min(...ends.map(({ toM }) => toM));
    if (ends.every(({ toM }) => toM > maxDepthM - SAME_LEVEL_M))
      return { none: 'This dive has one level: its deepest is every level.' };
    function* tries(): Generator<Try> {
      const grid = depthGridM(system);
      for (let steps = 0; onGrid(shallowestM, steps, system) >= SHALLOWEST_M; steps += 1) {
        const toM = onGrid(maxDepthM, steps, system);
        if (toM > maxDepthM - DUST) continue;
        yield {
          to: depthFigure(toM, system),
          doing: `Staying ${sayDepth(Math.max(grid, maxDepthM - toM), system)} shallower at every level`,
          cost: `${sayDepth(maxDepthM - toM, system)} less depth all along`,
          script() {
            const page = new ScriptPage(day.script);
            for (const { step, toM: depthM } of ends) setDepth(page, step, onGrid(depthM, steps, system), system);
            return finished(page);
          },
        };
      }
    }
    return {
      from: depthFigure(maxDepthM, system),
      unit: depthUnit(system),
      tries: tries(),
      even: `Even with the shallowest level at ${sayDepth(SHALLOWEST_M, system)} and the others above theirs by as much`,
    };
  },
};

/** So many steps of the grid above a depth, on the grid. */
function onGrid(depthM: number, steps: number, system: UnitSystem): number {
  const grid = depthGridM(system);
  return Math.round((stepsIn(depthM, grid) - steps) * grid * 1e6) / 1e6;
}
