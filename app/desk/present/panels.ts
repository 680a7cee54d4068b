import { PICTURE_IDS, pictures, type PictureId } from '../pictures/all';

/** What a presenter can put before a class, besides the pictures. */
const OTHER_PANELS = ['readings', 'time', 'script'] as const;

export const PANEL_IDS = [...PICTURE_IDS, ...OTHER_PANELS] as const;
export type PanelId = PictureId | (typeof OTHER_PANELS)[number];

const OTHER_TITLES: Record<(typeof OTHER_PANELS)[number], string> = {
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
