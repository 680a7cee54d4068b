import { parseGas } from '../../dive/gas-text';
import { AIR, OXYGEN, type Gas } from '../../physics/gas';

const AIR_WORDS =
  'air|luft|pressluft|druckluft|aire|aria|lucht|ar|luftti|ilma|powietrze|vzduch|hava|воздух|空気|空气|compressed air';
const OXYGEN_WORDS = 'oxygen|sauerstoff|oxygene|oxigeno|ossigeno|zuurstof|oxigenio|syre|tlen|kyslik|кислород|酸素|氧气';
const NAMES: ReadonlyMap<string, Gas> = new Map([
  ...AIR_WORDS.split('|').map((word) => [word, AIR] as const),
  ...OXYGEN_WORDS.split('|').map((word) => [word, OXYGEN] as const),
]);

/** A gas as exports write it: what a script understands, and more languages and spellings; undefined where it is not understood. */
export function recordedGas(text: string): Gas | undefined {
  const plain = text
    .trim()
    .toLowerCase()
    .normalize('NFD')
    .replace(/[\u0300-\u036f]/g, '')
    .replace(/[([].*[)\]]$/, '')
    .replace(/[_:=-]+/g, ' ')
    .replace(/\s+/g, ' ')
    .trim();
  const named = NAMES.get(plain);
  if (named) return named;
  const written = plain
    .replace(/^(nitrox|enriched air|eanx?|nx) ?(\d)/, 'nitrox $2')
    .replace(/^(trimix|tmx|tx|helitrox|heliox) ?(\d+) ?[/ ] ?(\d+)/, '$2/$3')
    .replace(/^o2 ?(\d)/, 'nitrox $1');
  const read = parseGas(written);
  return read.ok ? read.value : undefined;
}
