/** The lines of a script: they end with a line feed, and a carriage return alone counts as one. */
export function splitLines(text: string): string[] {
  return (text.includes('\r') ? text.replace(/\r(?!\n)/g, '\n') : text).split('\n');
}
