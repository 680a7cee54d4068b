import { PICTURE_IDS, type PictureId } from '../../pictures/picture-ids';
import { pictures } from '../../stage/figures/all';
import type { PanelId } from '../../stage/panel-ids';

const OTHER_TITLES: Record<Exclude<PanelId, PictureId>, string> = {
  readings: 'Readings',
  time: 'Time controls',
  script: 'Dive script',
};

export function isPicture(panel: PanelId): panel is PictureId {
  return (PICTURE_IDS as readonly string[]).includes(panel);
}

export function panelTitle(panel: PanelId): string {
  return isPicture(panel) ? pictures[panel].title : OTHER_TITLES[panel];
}

/** What is on show in the presenter's view: what was chosen for it, or the desk's own pictures and the readings. */
export function presentedPanels(document: {
  presented?: readonly PanelId[] | undefined;
  pictures: readonly PictureId[];
}): readonly PanelId[] {
  return document.presented ?? [...document.pictures, 'readings'];
}
