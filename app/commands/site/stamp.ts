/** Written last into a built folder: holds the moment the last good build began, so that a file saved while it ran still counts as newer. */
export const STAMP = '.built-from';
