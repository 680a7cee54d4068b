import { parseGas, writeGas } from '@/lib/dive/gas-text';
import { sameGas, type Gas } from '@/lib/physics/gas';
import { accepted, refused, type Parsed } from '@/lib/quantity/parsed';

const MOST_GASES = 5;

/** Reads `air, 32%, 18/45`: gases with a comma between, each once. */
export function parseGasList(text: string): Parsed<readonly Gas[]> {
  const gases: Gas[] = [];
  // A comma between digits is a decimal comma, not the end of a gas.
  for (const part of text.split(/(?<!\d),|,(?!\d)|;/)) {
    if (part.trim() === '') continue;
    const read = parseGas(part.trim());
    if (!read.ok) return read;
    if (read.value.o2 === 0)
      return refused(`“${part.trim()}” has no oxygen.`, 'Choose a gas that keeps a diver alive.');
    if (!gases.some((known) => sameGas(known, read.value))) gases.push(read.value);
  }
  if (gases.length === 0) return refused('No gas is written here.', 'Write gases such as air, 32%, 18/45.');
  if (gases.length > MOST_GASES)
    return refused(`There are ${gases.length} gases.`, `Write at most ${MOST_GASES}, so that they can be told apart.`);
  return accepted(gases);
}

export function printGasList(gases: readonly Gas[]): string {
  return gases.map(writeGas).join(', ');
}
