/** Letters and digits that are not taken for one another when read from a wall or said aloud. */
export const CODE_LETTERS = '23456789ABCDEFGHJKMNPQRSTVWXYZ';
export const CODE_LENGTH = 6;

/** A code as it was typed, in the form it was given out in; undefined for what can be none. */
export function readCode(text: string): string | undefined {
  const plain = text.toUpperCase().replace(/[\s-]/g, '');
  return plain.length === CODE_LENGTH && [...plain].every((letter) => CODE_LETTERS.includes(letter))
    ? plain
    : undefined;
}

/** A code in two halves, as it is read from a wall. */
export function spacedCode(code: string): string {
  return `${code.slice(0, CODE_LENGTH / 2)} ${code.slice(CODE_LENGTH / 2)}`;
}
