import type { CsvUnit, Role } from './csv-mapping';

/** What a heading says: the meaning of its column and its unit, where it tells; how sure the word is, 0–1. */
export interface HeadingRead {
  readonly role: Role;
  readonly unit: CsvUnit | undefined;
  readonly sure: number;
  /** The heading is in a language whose divers measure in metres. */
  readonly metric: boolean;
}

/** Words with which a heading that names a gas is of something else about it. */
const OF_A_GAS =
  /\b(pressure|partial|pp|toxicity|cns|otu|exposure|sensor|cell|time|rate|consum\w*|tank|volume|remaining|left|density|druck|\w*druck|presion|pression|pressione|verbrauch|used|temperature|temp)\b/;
const OF_SOMETHING_ELSE: Partial<Readonly<Record<Role, RegExp>>> = {
  gas: OF_A_GAS,
  oxygen: OF_A_GAS,
  helium: OF_A_GAS,
};

type Words = readonly (readonly [Role, string, string])[];

/**
 * Obvious headings in several languages: English ones first, then others. Most particular meanings come first, because
 * "stop time" is also a time. Compared without accents, capitals and punctuation.
 */
const WORDS: Words = [
  [
    'noStop',
    'no stop time|no stop|nostop|no deco time|no deco|no decompression|no decompression limit|ndl|nodecotime',
    'nullzeit|tempo non deco|tiempo sin deco|temps sans palier|geen deco',
  ],
  [
    'stopDepth',
    'stop depth|deco stop depth|deco depth|next stop depth',
    'stopptiefe|stoptiefe|dekotiefe|profondeur palier|palier|paliers|profundidad parada|profondita tappa|stopdiepte',
  ],
  [
    'stopTime',
    'stop time|deco stop time|deco time|next stop time',
    'stoppzeit|stopzeit|dekozeit|temps palier|duree palier|tiempo parada|tempo tappa|stoptijd',
  ],
  ['ceiling', 'ceiling|deco ceiling', 'plafond|techo|plafone|tetto|dekodecke'],
  [
    'temperature',
    'temperature|temp|water temperature|water temp',
    'temperatur|wassertemperatur|temperatura|temperatuur|lampotila|teplota|температура|水温|温度',
  ],
  ['oxygen', 'o2|fo2|oxygen', 'sauerstoff|oxygene|oxigeno|ossigeno|zuurstof|oxigenio|syre'],
  ['helium', 'he|fhe|helium', 'helio|elio'],
  ['gas', 'gas|mix|breathing gas|gas mix', 'gaz|gasgemisch|atemgas|melange|mezcla|miscela|gasmengsel'],
  [
    'time',
    'time|timestamp|time stamp|datetime|date time|elapsed|elapsed time|dive time|divetime|run time|runtime|t|seconds|minutes|sample time',
    'zeit|tauchzeit|dauer|laufzeit|temps|duree|tiempo|tempo|tijd|duiktijd|tid|dyketid|dykketid|czas|cas|aika|время|时间|時間|sekunden|minuten|secondes|segundos|secondi',
  ],
  [
    'depth',
    'depth|d|water depth',
    'tiefe|tauchtiefe|profondeur|prof|profundidad|profondita|profundidade|diepte|djup|dybde|dybte|glebokosc|hloubka|syvyys|глубина|深度|水深',
  ],
  ['dive', 'dive|dive no|dive number|dive nr', 'tauchgang|plongee|inmersion|immersione|mergulho|duik|dyk|nurkowanie'],
];

const UNIT_OF_WORD: ReadonlyMap<string, CsvUnit> = new Map(
  (
    [
      ['s', 's|sec|secs|second|seconds|sek|sekunden|secondes|segundos|secondi'],
      ['min', 'min|mins|minute|minutes|minuten|minutos|minuti'],
      ['h', 'h|hr|hrs|hour|hours|std'],
      ['ms', 'ms|millis|milliseconds'],
      ['m:ss', 'm:ss|mm:ss|min:sec|min:s'],
      ['h:mm:ss', 'h:mm:ss|hh:mm:ss|h:m:s'],
      ['h:mm', 'h:mm|hh:mm'],
      ['m', 'm|metre|metres|meter|meters|metres of water|msw|metri|metros|м'],
      ['ft', 'ft|foot|feet|fsw'],
      ['cm', 'cm|centimetres|centimeters'],
      ['%', '%|percent|pct'],
      ['fraction', 'fraction'],
      ['°C', '°c|c|degc|deg c|celsius'],
      ['°F', '°f|f|degf|deg f|fahrenheit'],
      ['K', 'k|kelvin'],
    ] as const
  ).flatMap(([unit, words]) => words.split('|').map((word) => [word, unit] as const)),
);

/** A word for a unit, such as `sec` or `(m)`; undefined if it is none. */
export function unitOfWord(text: string): CsvUnit | undefined {
  return UNIT_OF_WORD.get(
    plain(text)
      .replace(/^[([{]+|[)\]}]+$/g, '')
      .trim(),
  );
}

/** A number and the unit written after it in its own cell, such as `12.5 m`; without one, the cell as it is. */
export function partedUnit(cell: string): { readonly number: string; readonly unit: CsvUnit | undefined } {
  const parts = /^(.*\d)\s*(\p{L}{1,12}|°\s?\p{L}|%)$/su.exec(cell.trim());
  const unit = parts ? unitOfWord(parts[2]!) : undefined;
  return unit === undefined ? { number: cell, unit } : { number: parts![1]!, unit };
}

const ROLE_OF_WORD = new Map<string, { readonly role: Role; readonly metric: boolean }>();
for (const [role, english, others] of WORDS) {
  for (const word of english.split('|')) ROLE_OF_WORD.set(word, { role, metric: false });
  for (const word of others.split('|')) ROLE_OF_WORD.set(word, { role, metric: true });
}

/** Reads a heading such as `Depth (m)`, `time_s` or `Tiefe [m]`; undefined if none of its words is known. */
export function readHeading(heading: string): HeadingRead | undefined {
  const text = plain(heading);
  const bracketed = /^(.*?)[([{]([^)\]}]*)[)\]}]\s*$/.exec(text);
  const name = words(bracketed?.[1] ?? text);
  const unit = bracketed ? unitOfWord(bracketed[2]!) : undefined;
  const whole = ROLE_OF_WORD.get(name);
  if (whole) return { ...whole, unit: unit ?? unitNamed(name), sure: 1 };
  // The unit may be the last word: `depth m`, `time_s`, `depth/m`.
  const parts = name.split(' ');
  const tail = unitOfWord(parts.at(-1)!);
  if (tail !== undefined && parts.length > 1) {
    const rest = ROLE_OF_WORD.get(parts.slice(0, -1).join(' ').replace(/ in$/, ''));
    if (rest) return { ...rest, unit: unit ?? tail, sure: 1 };
  }
  for (const [role, english, others] of WORDS) {
    if (OF_SOMETHING_ELSE[role]?.test(name)) continue;
    for (const word of `${english}|${others}`.split('|')) {
      if (word.length > 2 && ` ${name} `.includes(` ${word} `)) {
        return { role, metric: ROLE_OF_WORD.get(word)!.metric, unit: unit ?? tail, sure: 0.6 };
      }
    }
  }
  return undefined;
}

/** `seconds` and `minutes` are headings that are units themselves. */
function unitNamed(name: string): CsvUnit | undefined {
  return name.length > 2 ? UNIT_OF_WORD.get(name) : undefined;
}

/** A heading without accents, capitals and punctuation, words of a camelCase one apart. */
export function headingWords(heading: string): string {
  return words(plain(heading));
}

function plain(text: string): string {
  return text
    .trim()
    .replace(/(\p{Ll})(\p{Lu})/gu, '$1 $2')
    .toLowerCase()
    .normalize('NFD')
    .replace(/[\u0300-\u036f]/g, '')
    .replace(/ł/g, 'l')
    .replace(/ø/g, 'o');
}

/** Letters, digits and percent signs, single spaces between; the degree sign, which only units have, stays. */
function words(text: string): string {
  return text.replace(/[^\p{L}\p{N}%°:]+/gu, ' ').trim();
}
