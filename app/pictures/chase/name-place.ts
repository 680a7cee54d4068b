/** How far a letter rises above its line, and hangs below it. */
const LETTER = { above: 12, below: 3 };

/**
 * The line to write a mark's name on, which no line of the picture strikes and which is not among the words under its foot:
 * over the mark, under it, or past what is in the way.
 */
export function nameY(
  markY: number,
  reach: number,
  lines: readonly (readonly [top: number, foot: number])[],
  footY: number,
): number {
  const strikes = (at: number) => lines.some(([top, foot]) => foot > at - LETTER.above && top < at + LETTER.below);
  const over = markY - reach - 5;
  const beyond = lines.flatMap(([top, foot]) => [top - LETTER.below - 1, foot + LETTER.above + 1]);
  const places = [
    over,
    markY + reach + LETTER.above + 3,
    ...beyond.sort((one, other) => Math.abs(one - over) - Math.abs(other - over)),
  ];
  return (
    places.find(
      (at) => at > LETTER.above && at < footY - LETTER.below && Math.abs(at - markY) >= reach && !strikes(at),
    ) ?? over
  );
}
