import type { Shown } from '@/lib/rules/unit/shown';
import type { UnitReadingId } from '@/lib/sayings/unit-readings';
import type { UnitReadingId as AskedId } from '@/lib/working/rules/unit-all';

interface UnitQuestion {
  readonly reading: AskedId;
  readonly about: string;
  /** Whether a unit shows a figure to ask about. */
  shows(shown: Shown): boolean;
}

const isUnderWater = ({ mode }: Shown) => mode === 'dive';

/** What a unit can be asked about each of its readings. */
export const UNIT_QUESTIONS: Readonly<Partial<Record<UnitReadingId, UnitQuestion>>> = {
  rate: { reading: 'rate', about: 'this rate', shows: ({ rateMMin }) => rateMMin !== null },
  'no-stop': { reading: 'no-stop', about: 'this no-stop time', shows: isUnderWater },
  ceiling: { reading: 'ceiling', about: 'this ceiling', shows: isUnderWater },
  'required-stop': { reading: 'required-stop', about: 'this required stop', shows: isUnderWater },
  'imposed-stop': {
    reading: 'imposed-stop',
    about: 'this imposed stop',
    shows: ({ imposedStop }) => imposedStop !== null,
  },
  'time-to-surface': {
    reading: 'time-to-surface',
    about: 'this time to surface',
    shows: ({ timeToSurfaceMin }) => timeToSurfaceMin !== null,
  },
  'safety-stop': { reading: 'safety-stop', about: 'this safety stop', shows: ({ safetyStop }) => safetyStop !== null },
  'no-fly': { reading: 'no-fly', about: 'this wait before flying', shows: ({ noFlyH }) => noFlyH !== null },
  desaturation: {
    reading: 'desaturation',
    about: 'this time until desaturated',
    shows: ({ desaturationH }) => desaturationH !== null,
  },
};
