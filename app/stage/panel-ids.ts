import { PICTURE_IDS, type PictureId } from '../pictures/picture-ids';

/** What a presenter can put before a class, besides the pictures. */
const OTHER_PANELS = ['readings', 'time', 'script'] as const;

export const PANEL_IDS = [...PICTURE_IDS, ...OTHER_PANELS] as const;
export type PanelId = PictureId | (typeof OTHER_PANELS)[number];
