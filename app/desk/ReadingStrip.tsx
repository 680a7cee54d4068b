'use client';

import { fetchedLater } from '../parts/fetched-later';
import { READING_IDS, type ReadingId } from '../stage/reading-ids';

// The page comes with them drawn; they move once the desk has opened.
const ReadingsPanel = fetchedLater(async () => (await import('../stage/after-opening')).ReadingsPanel);

/** What has to be seen together with the pictures; all others are one press away. */
const ON_THE_STRIP: readonly ReadingId[] = ['depth', 'time', 'no-stop', 'ceiling', 'required-stop', 'rate'];

const FURTHER = READING_IDS.filter((id) => !ON_THE_STRIP.includes(id));

/** The readings that change as the dive goes, in equal tiles of one ruled line. */
export function ReadingStrip() {
  return <ReadingsPanel only={ON_THE_STRIP} strip />;
}

/** All other readings, in the same order. */
export function FurtherReadings() {
  return <ReadingsPanel only={FURTHER} />;
}
