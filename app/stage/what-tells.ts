import type { Tells } from '@/lib/lesson/questions/known-names';
import { COMPARTMENTS } from '@/lib/tissue/coefficients';
import type { UnitReadingId } from '@/lib/working/rules/unit-all';
import type { PictureId } from '../pictures/picture-ids';
import type { ReadingId } from './reading-ids';

const TENSIONS = ['tensionBar', 'nitrogenBar', 'filledPercent', 'mValueBar', 'surfaceLimitBar'];
const SUPERSATURATIONS = [
  'supersaturationPercent',
  'supersaturationLeader',
  'surfacingSupersaturationPercent',
  'surfacingSupersaturationLeader',
];
const CEILING = ['ceilingM', 'ceilingLeader', 'deepestCeilingM', 'aboveCeilingMin', 'mostAboveCeilingM'];
const NO_STOP = ['noStopMin', 'noStopLeader'];
const STOPS = ['stopM', 'stopMin', 'stopsMin', 'stopMinAt', 'stopCount', 'requiredStopMin', 'deepestStopM'];
const EVENTS = ['count', 'firstMin'];
const WAITS = ['noFlyMin', 'noFlyModelMin', 'noFlyGuidelineMin'];

/**
 * The facts that each picture, and each reading with its working, tells whoever looks at it: in the drawing, its
 * sentence or the table behind it. A lesson may show none of them before it asks for the same.
 */
const SHOWN: Readonly<Record<PictureId | ReadingId | Exclude<UnitReadingId, `tension-${number}`>, readonly string[]>> =
  {
    profile: [...CEILING, ...EVENTS, 'noStopMin'],
    chase: ['breathedInertBar', 'ambientBar', ...TENSIONS, 'noStopLeader', 'ceilingLeader'],
    pressure: ['ambientBar', ...TENSIONS, 'noStopLeader', 'ceilingLeader'],
    loading: SUPERSATURATIONS,
    supersaturation: SUPERSATURATIONS,
    'no-stop': [...NO_STOP, 'ceilingM', 'ceilingLeader', ...EVENTS],
    log: [...EVENTS, 'safetyStopLeftMin', 'breaches', 'lockedMin'],
    units: [...NO_STOP, ...CEILING, ...STOPS, ...SUPERSATURATIONS, ...WAITS, 'safetyStopLeftMin', 'oxygenBar', 'modM'],
    rules: [],
    ascent: ['lostWashoutPercent', 'heldBreathRatio', 'heldBreathExcessBar', 'breaches', 'supersaturationPercent'],
    surface: [...WAITS, 'altitudeWaitMin', 'desaturationMin', 'nextNoStopMin', ...TENSIONS],
    oxygen: ['oxygenBar', 'oxygenClockPercent', 'oxygenDayPercent', 'pulmonaryUnits'],
    supply: ['cylinderBar', 'gasUsedL'],
    staged: [...STOPS, 'timeToSurfaceMin'],
    helium: ['heliumBar', 'nitrogenBar', 'tensionBar'],
    depth: [],
    time: [],
    ceiling: CEILING,
    'required-stop': STOPS,
    'time-to-surface': ['timeToSurfaceMin', ...STOPS],
    'surfacing-supersaturation': SUPERSATURATIONS,
    rate: ['rateMMin'],
    'safety-stop': ['safetyStopLeftMin'],
    'imposed-stop': ['imposedStopM', 'imposedStopLeftMin'],
    'no-fly': WAITS,
    'oxygen-pressure': ['oxygenBar'],
    'oxygen-single': ['oxygenClockPercent'],
    'oxygen-daily': ['oxygenDayPercent'],
    'oxygen-pulmonary': ['pulmonaryUnits'],
    'gas-density': ['gasDensityGL'],
    cylinder: ['cylinderBar', 'gasUsedL'],
    'credited-no-stop': ['creditedNoStopMin'],
    mod: ['modM'],
    end: ['endM', 'endNitrogenM'],
    'end-nitrogen': ['endM', 'endNitrogenM'],
    'tightened-limits': ['unitHighPercent'],
    desaturation: ['desaturationMin'],
  };

/** The same with the working of every compartment's tension. */
export const TELLS: Tells = {
  ...SHOWN,
  ...Object.fromEntries(Array.from({ length: COMPARTMENTS }, (_, c) => [`tension-${c + 1}`, TENSIONS])),
};
