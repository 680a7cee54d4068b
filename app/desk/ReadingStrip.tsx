'use client';

import { fetchedLater } from '../parts/fetched-later';
import styles from '../stage/stage.module.css';
import { READING_IDS, type ReadingId } from '../stage/reading-ids';

/** What has to be seen together with the pictures; all others are one press away. */
const ON_THE_STRIP: readonly ReadingId[] = ['depth', 'time', 'no-stop', 'ceiling', 'required-stop', 'rate'];

// Their place is kept until they are there.
const Strip = fetchedLater(
  async () => (await import('../stage/after-opening')).ReadingsPanel,
  () => (
    <div className={styles.strip}>
      {ON_THE_STRIP.map((id) => (
        <div key={id} />
      ))}
    </div>
  ),
);
const Further = fetchedLater(async () => (await import('../stage/after-opening')).ReadingsPanel);

const FURTHER = READING_IDS.filter((id) => !ON_THE_STRIP.includes(id));

/** The readings that change as the dive goes, in equal tiles of one ruled line. */
export function ReadingStrip() {
  return <Strip only={ON_THE_STRIP} strip />;
}

/** All other readings, in the same order. */
export function FurtherReadings() {
  return <Further only={FURTHER} />;
}
