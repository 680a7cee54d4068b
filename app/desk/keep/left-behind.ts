import type { StoredDive } from '@/lib/files/records/stored-dives';
import type { DeskRecord } from './desk-record';
import { firstRemark } from '../../pictures/dive-title';
import { diveRecord, savedDive } from './saved-dive';

/** The name on the shelf of what one visit left behind: a later one of the same visit takes its place. */
export const leftBehindBy = (visit: string) => diveRecord(`left-${visit}`);

/** A desk that would else be written over, as a saved dive and its record. */
export function leftBehind({ visit, script, desk, savedAt }: DeskRecord): {
  readonly dive: StoredDive;
  readonly record: Readonly<Record<string, StoredDive>>;
} {
  const title = `${firstRemark(script) ?? 'A dive'} (left on the desk)`;
  const dive = savedDive({ id: `left-${visit}`, title, script, view: desk, savedAt });
  return { dive, record: { [leftBehindBy(visit)]: dive } };
}
