/** How many lines a file may have without saying why it has more. */
export const MOST_LINES = 300;

/** Whether a file is longer than it may be, and does not say why in its first comment. */
export function isTooLong(text: string): boolean {
  const lines = text.trimEnd().split('\n').length;
  const first = /\/\*[^]*?\*\//.exec(text)?.[0] ?? '';
  return lines > MOST_LINES && !/Long because/.test(first);
}
