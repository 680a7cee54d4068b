import { unitSayings } from '@/lib/sayings/unit-readings';
import { modelSayings } from '@/lib/sayings/model-readings';
import type { Heard } from '@/lib/sayings/where';
import type { DeskDocument } from '../desk-store';
import { pictures } from '../figures/all';
import { READING_IDS, type ReadingId } from '../reading-ids';

/**
 * What is not in the dive: which readings are covered, which pictures are shown, what lies over the dive, and the
 * rules. Whoever chooses pictures is told of them where they are chosen; of those that undoing brings, here.
 */
export function sayChange(before: DeskDocument, now: DeskDocument, heard: Heard, withPictures: boolean): string {
  return [
    sayCovering(before.covered, now.covered, heard),
    ...(withPictures ? sayPictures(before.pictures, now.pictures) : []),
    before.overlay !== now.overlay &&
      (now.overlay ? `${now.overlay.title} lies over the dive.` : 'No second dive lies over it.'),
    before.rules !== now.rules && 'The rules of the unit are others.',
  ]
    .filter(Boolean)
    .join(' ');
}

function sayCovering(before: readonly ReadingId[], now: readonly ReadingId[], heard: Heard): string {
  const covered = now.filter((id) => !before.includes(id));
  const uncovered = before.filter((id) => !now.includes(id));
  if (covered.length + uncovered.length === 0) return '';
  if (now.length === 0 && uncovered.length > 1) return 'No reading is covered any more.';
  if (READING_IDS.every((id) => now.includes(id))) return 'All readings are covered.';
  const names = (ids: readonly ReadingId[]) => ids.map((id) => nameOf(id, heard)).join(', ');
  return [
    covered.length > 0 && `Covered: ${names(covered)}.`,
    uncovered.length > 0 && `Uncovered: ${names(uncovered)}.`,
  ]
    .filter(Boolean)
    .join(' ');
}

/** Those of oxygen and gas are fetched only once they are asked for. */
function nameOf(id: ReadingId, { model, unit }: Heard): string {
  const said: Readonly<Partial<Record<ReadingId, { readonly name: string }>>> = {
    ...unitSayings(unit, 'metric'),
    ...modelSayings(model, 'metric'),
  };
  return said[id]?.name ?? id.replaceAll('-', ' ');
}

function sayPictures(before: DeskDocument['pictures'], now: DeskDocument['pictures']): string[] {
  if (before === now) return [];
  const shown = now.filter((id) => !before.includes(id)).map((id) => `Shown: ${pictures[id].title}.`);
  const gone = before.filter((id) => !now.includes(id)).map((id) => `Put away: ${pictures[id].title}.`);
  return shown.length + gone.length > 0 ? [...shown, ...gone] : ['The pictures stand in another order.'];
}
