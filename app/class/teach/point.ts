import { classAddress } from '@/lib/class/address';
import { teacherFetch, useTeacher } from './teacher-line';

let pointed = 0;
let pointing = false;
const POINT_MS = 150;

/** Tells phones where the hand stands on the dive they follow; the latest place is sent, some times a second. */
export function point(atS: number): void {
  pointed = atS;
  if (pointing) return;
  pointing = true;
  setTimeout(() => {
    pointing = false;
    const { held, standing } = useTeacher.getState();
    if (held && standing === 'open') void teacherFetch(classAddress.point, { atS: pointed });
  }, POINT_MS);
}
