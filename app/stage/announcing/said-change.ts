import { unitSayings } from '@/lib/sayings/unit-readings';
import { modelSayings } from '@/lib/sayings/model-readings';
import type { Heard } from '@/lib/sayings/where';
import type { DeskDocument } from '../desk-state';
import type { PictureId } from '../../pictures/picture-ids';
import { READING_IDS, type ReadingId } from '../reading-ids';

/** What a picture is called. */
export type TitleOf = (id: PictureId) => string;

/**
 * What is not in the dive: which readings are covered, which pictures are shown, what lies over the dive, and the
 * rules. Whoever chooses pictures is told of them where they are chosen; of those that undoing brings, here.
 */
export function sayChange(before: DeskDocument, now: DeskDocument, heard: Heard, titleOf: TitleOf | undefined): string {
  return [
    sayCovering(before.covered, now.covered, heard),
    ...(titleOf ? sayPictures(before.pictures, now.pictures, titleOf) : []),
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

function sayPictures(before: DeskDocument['pictures'], now: DeskDocument['pictures'], titleOf: TitleOf): string[] {
  if (before === now) return [];
  const shown = now.filter((id) => !before.includes(id)).map((id) => `Shown: ${titleOf(id)}.`);
  const gone = before.filter((id) => !now.includes(id)).map((id) => `Put away: ${titleOf(id)}.`);
  return shown.length + gone.length > 0 ? [...shown, ...gone] : ['The pictures stand in another order.'];
}
