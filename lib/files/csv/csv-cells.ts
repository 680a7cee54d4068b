/** Columns of a row that are looked at; what stands further right is passed over. */
const MAX_COLUMNS = 128;
/** A quotation mark that is not closed within so many characters is an ordinary character. */
const LONGEST_QUOTED = 65_536;

const QUOTE = 34;
const NEWLINE = 10;
const RETURN = 13;
const SPACE = 32;

/**
 * Finds the rows and cells of a CSV text without making strings of them, as RFC 4180 describes them but with any
 * separator. A space as separator may be repeated. While `onRow` runs, the cells are between `from` and `to` in `text`;
 * `row` is the line of the file on which the row begins, from 1.
 */
export class RowScanner {
  readonly from = new Int32Array(MAX_COLUMNS);
  readonly to = new Int32Array(MAX_COLUMNS);
  cells = 0;
  row = 1;
  text = '';
  private readonly separator: number;
  /** Line ends within the quoted cells of the current row. */
  private quotedLines = 0;

  constructor(separator: string) {
    this.separator = separator.charCodeAt(0);
  }

  /**
   * Scans a piece of the file. Returns what is left over of an unfinished row at its end, to be put before the next
   * piece; nothing is left over from the `last` piece.
   */
  scan(text: string, last: boolean, onRow: () => void): string {
    this.text = text;
    let at = 0;
    while (at < text.length) {
      const next = this.scanRow(at, last);
      if (next < 0) return text.slice(at);
      onRow();
      this.row += 1 + this.quotedLines;
      at = next;
    }
    return '';
  }

  /** The text of a cell of the current row; empty where the row is shorter. */
  cell(column: number): string {
    if (column >= this.cells) return '';
    const raw = this.text.slice(this.from[column], this.to[column]);
    return raw.includes('""') ? raw.replaceAll('""', '"') : raw;
  }

  /** Takes in one row; returns where the next begins, or −1 if this one may go on beyond the text. */
  private scanRow(start: number, last: boolean): number {
    const { text, separator, from, to } = this;
    const { length } = text;
    const runs = separator === SPACE;
    let at = start;
    let column = 0;
    this.quotedLines = 0;
    for (;;) {
      if (runs) while (at < length && text.charCodeAt(at) === SPACE) at += 1;
      let cellFrom = at;
      let cellTo = -1;
      if (at < length && text.charCodeAt(at) === QUOTE) {
        const close = this.closingQuote(at + 1, last);
        if (close === UNFINISHED) return -1;
        if (close !== NOT_QUOTED) {
          cellFrom = at + 1;
          cellTo = close;
          at = close + 1;
        }
      }
      let code = -1;
      while (at < length) {
        code = text.charCodeAt(at);
        if (code === separator || code === NEWLINE || code === RETURN) break;
        at += 1;
      }
      if (at >= length && !last) return -1;
      if (column < MAX_COLUMNS) {
        from[column] = cellFrom;
        to[column] = cellTo >= 0 ? cellTo : at;
        column += 1;
      }
      if (at < length && code === separator) {
        at += 1;
        continue;
      }
      if (at < length && code === RETURN) {
        if (at + 1 >= length && !last) return -1;
        if (text.charCodeAt(at + 1) === NEWLINE) at += 1;
      }
      // A space before the end of the line parts nothing.
      this.cells = runs && column > 1 && from[column - 1] === to[column - 1] ? column - 1 : column;
      return Math.min(at + 1, length);
    }
  }

  /** Where the quotation mark that ends a cell stands. Counts the lines the cell runs over. */
  private closingQuote(from: number, last: boolean): number {
    const { text } = this;
    const limit = from + LONGEST_QUOTED;
    let at = from;
    for (;;) {
      at = text.indexOf('"', at);
      if (at < 0 || at > limit) return at < 0 && !last && text.length <= limit ? UNFINISHED : NOT_QUOTED;
      if (at + 1 >= text.length && !last) return UNFINISHED;
      if (text.charCodeAt(at + 1) !== QUOTE) break;
      at += 2;
    }
    for (let i = from; i < at; i += 1) if (text.charCodeAt(i) === NEWLINE) this.quotedLines += 1;
    return at;
  }
}

const UNFINISHED = -1;
const NOT_QUOTED = -2;

const POWERS_OF_TEN = Array.from({ length: 16 }, (_, exponent) => 10 ** exponent);

/**
 * The number written between two places of a text, with `decimal` (a character code) as its decimal mark; NaN if it is
 * anything else. It is the number nearest to what is written: up to 15 digits are kept whole and divided once by an
 * exact power of ten, which rounds correctly; longer ones are left to the language's own reader.
 */
export function numberBetween(text: string, start: number, end: number, decimal: number): number {
  let at = start;
  let stop = end;
  while (at < stop && text.charCodeAt(at) <= SPACE) at += 1;
  while (stop > at && text.charCodeAt(stop - 1) <= SPACE) stop -= 1;
  const first = at;
  let sign = 1;
  const lead = text.charCodeAt(at);
  // Minus, the true minus sign, plus.
  if (lead === 45 || lead === 0x2212) {
    sign = -1;
    at += 1;
  } else if (lead === 43) at += 1;
  let whole = 0;
  let digits = 0;
  let decimals = -1;
  let grouped = false;
  for (; at < stop; at += 1) {
    const code = text.charCodeAt(at);
    if (code >= 48 && code <= 57) {
      whole = whole * 10 + (code - 48);
      digits += 1;
      if (decimals >= 0) decimals += 1;
    } else if (code === decimal && decimals < 0) decimals = 0;
    else if (decimals < 0 && digits > 0 && (digits <= 3 || grouped) && partsThousands(text, at, stop, decimal))
      grouped = true;
    else if ((code === 69 || code === 101) && digits > 0) return longNumber(text, first, stop, decimal);
    else return NaN;
  }
  if (digits === 0) return NaN;
  if (digits > 15) return longNumber(text, first, stop, decimal);
  const value = decimals > 0 ? whole / POWERS_OF_TEN[decimals]! : whole;
  return sign < 0 && value !== 0 ? -value : value;
}

/** Whether a mark stands before exactly three digits: `1,000` where points mark decimals, `1.000` where commas do, `1'000`. */
function partsThousands(text: string, at: number, stop: number, decimal: number): boolean {
  const code = text.charCodeAt(at);
  const other = decimal === COMMA ? POINT : COMMA;
  if (code !== other && code !== 39 && code !== 0xa0 && code !== 0x202f) return false;
  const isDigit = (place: number) => place < stop && text.charCodeAt(place) >= 48 && text.charCodeAt(place) <= 57;
  return isDigit(at + 1) && isDigit(at + 2) && isDigit(at + 3) && !isDigit(at + 4);
}

const COMMA = 44;
const POINT = 46;

function longNumber(text: string, from: number, to: number, decimal: number): number {
  const plain = text.slice(from, to).replace('\u2212', '-');
  if (decimal !== 46 && plain.includes('.')) return NaN;
  const value = /^[-+]?[\d.,]+(e[-+]?\d{1,4})?$/i.test(plain)
    ? Number(plain.replace(String.fromCharCode(decimal), '.'))
    : NaN;
  return Number.isFinite(value) ? value + 0 : NaN;
}
