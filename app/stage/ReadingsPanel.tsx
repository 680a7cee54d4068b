'use client';

import { modelSayings } from '@/lib/sayings/model-readings';
import { usePreferences } from '../parts/preferences';
import { Button } from '../parts/Button';
import { Reading } from '../parts/Reading';
import { useCovering } from './covering';
import { cursorSample } from './desk-store';
import { useDesk, useDeskOncePainted } from './desk-context';
import { ExposureReadings, isExposureReading } from './gas/ExposureReadings';
import { modelMomentOf } from './model-moment';
import { READING_IDS, type ReadingId } from './reading-ids';
import { tileOf } from './tile-of';
import { UnitInsists } from './units/UnitInsists';
import { UnitReadings } from './units/UnitReadings';
import { DeskWhy } from './why/DeskWhy';
import styles from './stage.module.css';

interface ReadingsPanelProps {
  only?: readonly ReadingId[];
  /** In equal tiles of one line, without a head. */
  strip?: boolean;
}

/** What the model says at the time cursor: every reading, or `only` some. */
export function ReadingsPanel({ only, strip = false }: ReadingsPanelProps) {
  const scene = useDeskOncePainted((state) => state.scene);
  const sample = useDeskOncePainted(cursorSample);
  const units = usePreferences((state) => state.units);
  const said = modelSayings(modelMomentOf(scene, sample), units);
  const covered = useDesk((state) => state.covered);
  const change = useDesk((state) => state.change);
  const cover = useCovering(only);

  return (
    <section
      aria-label="Readings"
      data-tour="readings"
      data-strip={strip || undefined}
      className={strip ? styles.strip : styles.readings}
    >
      {!strip && (
        <div className={styles.readingsHead}>
          <h2>Readings</h2>
          <Button kind="quiet" onClick={() => change({ covered: covered.length === 0 ? READING_IDS : [] })}>
            {covered.length === 0 ? 'Cover all' : 'Uncover all'}
          </Button>
        </div>
      )}
      <Reading {...cover('depth')} {...tileOf(said.depth)} roomFor={5} />
      <Reading {...cover('time')} {...tileOf(said.time)} roomFor={7} />
      <Reading
        {...cover('no-stop')}
        {...tileOf(said['no-stop'])}
        why={<DeskWhy reading="no-stop" about="this no-stop time" />}
        roomFor={4}
        note={
          said['no-stop'].note.includes(said['credited-no-stop'].text) ? (
            <>
              {said['no-stop'].note}{' '}
              <DeskWhy small reading="credited-no-stop" about="the no-stop time with credit for the way up" />
            </>
          ) : (
            said['no-stop'].note
          )
        }
      />
      <Reading
        {...cover('ceiling')}
        {...tileOf(said.ceiling)}
        why={<DeskWhy reading="ceiling" about="this ceiling" />}
        roomFor={5}
      />
      <Reading
        {...cover('required-stop')}
        {...tileOf(said['required-stop'])}
        why={<DeskWhy reading="required-stop" about="this required stop" />}
        roomFor={4}
      />
      <Reading
        {...cover('time-to-surface')}
        {...tileOf(said['time-to-surface'])}
        why={<DeskWhy reading="time-to-surface" about="this time to surface" />}
        roomFor={5}
      />
      <Reading
        {...cover('supersaturation')}
        {...tileOf(said.supersaturation)}
        why={<DeskWhy reading="supersaturation" about="this supersaturation" />}
        roomFor={4}
      />
      <Reading
        {...cover('surfacing-supersaturation')}
        {...tileOf(said['surfacing-supersaturation'])}
        why={<DeskWhy reading="surfacing-supersaturation" about="this supersaturation on surfacing" />}
        roomFor={4}
      />
      <UnitReadings only={only} />
      {!strip && <UnitInsists />}
      {(only === undefined || only.some(isExposureReading)) && <ExposureReadings only={only} />}
    </section>
  );
}
