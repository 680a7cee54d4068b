import { afterDiveAt } from '../../rules/surface/after-dive';
import { shownAt } from '../../rules/unit/shown';
import { READING_IDS, workingFor, type ReadingId } from '../all';
import { desaturationWorking } from './desaturation-working';
import { flyingWorking } from './flying-working';
import { imposedStopWorking } from './imposed-stop-working';
import { rateWorking } from './rate-working';
import { REMARKS } from '../remarks';
import { safetyStopWorking } from './safety-stop-working';
import { tightenedWorking } from './tightened-working';
import { modelInstant, type UnitInstant } from './unit-instant';
import { unitTimeToSurfaceWorking } from './unit-surface-working';
import type { Working } from '../working';

/** What a unit's rules add to the model's readings. */
export const RULE_READING_IDS = [
  'rate',
  'safety-stop',
  'imposed-stop',
  'tightened-limits',
  'no-fly',
  'desaturation',
] as const;
export type RuleReadingId = (typeof RULE_READING_IDS)[number];

/** What a unit shows of the model under water alone. */
const UNDER_WATER: ReadonlySet<ReadingId> = new Set([
  'no-stop',
  'credited-no-stop',
  'ceiling',
  'required-stop',
  'time-to-surface',
]);

/** Any reading a unit can be asked about. */
export type UnitReadingId = ReadingId | RuleReadingId;

/** Whether a reading of a unit comes from a rule and not from the model. */
export function isRuleReading(reading: UnitReadingId): reading is RuleReadingId {
  return (RULE_READING_IDS as readonly string[]).includes(reading);
}

/**
 * Why a unit shows what it shows at one sample: its own depths, tissues, limits and rules. Null for what it does not show
 * there. Throws RangeError for a reading or a sample there is not.
 */
export function unitWorkingFor(reading: UnitReadingId, unit: UnitInstant): Working | null {
  const { watch, sample } = unit;
  if (!Number.isInteger(sample) || sample < 0 || sample >= watch.timeline.length) {
    throw new RangeError(
      `the timeline has no sample ${sample}: its samples are numbered 0 to ${watch.timeline.length - 1}`,
    );
  }
  const shown = shownAt(watch, sample);
  if (shown.mode === 'gauge' || shown.mode === 'locked out') return null;
  if (!isRuleReading(reading))
    return shown.mode !== 'dive' && UNDER_WATER.has(reading) ? null : modelWorking(reading, unit);
  switch (reading) {
    case 'rate':
      return shown.rateMMin === null ? null : rateWorking(unit);
    case 'safety-stop':
      return shown.safetyStop ? safetyStopWorking(unit) : null;
    case 'imposed-stop':
      return shown.imposedStop ? imposedStopWorking(unit) : null;
    case 'tightened-limits':
      return shown.tightenedHigh === null ? null : tightenedWorking(unit);
    default: {
      const after = afterDiveAt(watch, sample);
      if (!after) return null;
      if (reading === 'desaturation') return shown.desaturationH === null ? null : desaturationWorking(unit);
      return shown.noFlyH === null ? null : flyingWorking(unit, after);
    }
  }
}

function modelWorking(reading: ReadingId, unit: UnitInstant): Working {
  const { timeline, figures, sample } = modelInstant(unit);
  const working =
    reading === 'time-to-surface' ? unitTimeToSurfaceWorking(unit) : workingFor(reading, timeline, figures, sample);
  const tightened =
    unit.watch.tracks.tightness[sample]! > 0 &&
    Object.values(working.steps).some(({ values }) => 'gf' in values || 'gf_high' in values);
  return tightened ? { ...working, cautions: [REMARKS.tightened, ...(working.cautions ?? [])] } : working;
}

export const UNIT_READING_IDS: readonly UnitReadingId[] = [...READING_IDS, ...RULE_READING_IDS];
