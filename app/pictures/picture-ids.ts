/** The pictures of the desk by name, in the order they are offered. Apart from the pictures, so that a command or a check can list them without drawing any. */
export const PICTURE_IDS = [
  'profile',
  'chase',
  'pressure',
  'loading',
  'supersaturation',
  'no-stop',
  'log',
  'units',
  'rules',
  'ascent',
  'surface',
  'oxygen',
  'supply',
  'staged',
  'helium',
] as const;
export type PictureId = (typeof PICTURE_IDS)[number];
