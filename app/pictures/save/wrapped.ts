/** Words in lines no longer than `most`, measured by `length`: characters, unless told otherwise. */
export function wrapped(
  text: string,
  most: number,
  length: (line: string) => number = (line) => line.length,
): string[] {
  const lines: string[] = [];
  for (const word of text.split(/\s+/)) {
    const last = lines.at(-1);
    if (last !== undefined && length(`${last} ${word}`) <= most) lines[lines.length - 1] = `${last} ${word}`;
    else lines.push(word);
  }
  return lines;
}
