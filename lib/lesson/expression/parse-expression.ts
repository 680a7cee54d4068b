import { accepted, quoted, refused, type Parsed, type Refusal } from '../../quantity/parsed';
import { tidy } from '../../quantity/number';
import { UNIT_WORDS } from './dimension';
import {
  FUNCTION_NAMES,
  NAMED_MOMENTS,
  type ComparisonSign,
  type Expression,
  type FactArgument,
  type FactCall,
  type FunctionName,
  type WrittenMoment,
  type NamedMoment,
  type Place,
} from './expression';
import { tokensOf, type Token } from './tokens';

/* Long because a grammar is read as one, from its top to its leaves. */

export const LONGEST_EXPRESSION = 400;
const DEEPEST = 24;

/** Reads an expression. Never throws; a refusal says what is wrong, where, and how to mend it. */
export function parseExpression(text: string): Parsed<Expression> {
  return read(text, (reader) => reader.expression());
}

/** Reads a moment alone, such as `5 min`, `arrival` or `2 min after leaving in dive 1`. */
export function parseMoment(
  text: string,
): Parsed<{ readonly moment: WrittenMoment; readonly dive: number | undefined }> {
  return read(text, (reader) => reader.momentAlone());
}

function read<T>(text: string, part: (reader: Reader) => T): Parsed<T> {
  if (text.length > LONGEST_EXPRESSION)
    return refused('This expression is too long.', `Write at most ${LONGEST_EXPRESSION} characters.`);
  const cut = tokensOf(text);
  if (!cut.ok) return cut;
  const reader = new Reader(cut.tokens);
  try {
    const made = part(reader);
    reader.finish();
    return accepted(made);
  } catch (stop) {
    if (stop instanceof Stop) return stop.refusal;
    throw stop;
  }
}

/** Ends reading at the first thing that makes no sense. */
class Stop extends Error {
  constructor(readonly refusal: Refusal) {
    super(refusal.what);
  }
}

const COMPARISONS: readonly string[] = ['==', '!=', '<', '<=', '>', '>='];
const QUALIFIERS: readonly string[] = ['at', 'in', 'of', 'on'];
const RESERVED: readonly string[] = [
  ...QUALIFIERS,
  'and',
  'or',
  'not',
  'highest',
  'lowest',
  'after',
  'before',
  'first',
  'dive',
];

class Reader {
  private at = 0;
  private depth = 0;

  constructor(private readonly tokens: readonly Token[]) {}

  private get next(): Token {
    return this.tokens[this.at]!;
  }

  private take(): Token {
    const token = this.next;
    if (token.kind !== 'end') this.at += 1;
    return token;
  }

  private is(text: string): boolean {
    return (this.next.kind === 'sign' || this.next.kind === 'word') && this.next.text === text;
  }

  private skip(text: string): boolean {
    const found = this.is(text);
    if (found) this.at += 1;
    return found;
  }

  private stop(what: string, mend: string, place: Place = this.next.at): never {
    throw new Stop(refused(what, mend, place));
  }

  private expect(text: string, mend: string): void {
    if (!this.skip(text))
      this.stop(
        this.next.kind === 'end' ? 'The expression ends too early.' : `${quoted(this.next.text)} does not belong here.`,
        mend,
      );
  }

  private since(from: Place): Place {
    return [from[0], this.tokens[Math.max(0, this.at - 1)]!.at[1]];
  }

  finish(): void {
    if (this.next.kind === 'end') return;
    const { text } = this.next;
    if (text === '=') this.stop('A single = says nothing here.', 'Write == to compare.');
    if (UNIT_WORDS.has(text.toLowerCase()))
      this.stop(`${quoted(text)} stands alone.`, 'Write a unit right after its number, such as 12 min.');
    this.stop(
      `${quoted(text)} does not belong here.`,
      'Put + - * / or a comparison between two values, and and or or between two conditions.',
    );
  }

  expression(): Expression {
    this.depth += 1;
    if (this.depth > DEEPEST)
      this.stop('This expression has too many parentheses inside one another.', 'Cut it into simpler parts.');
    const whole = this.either();
    this.depth -= 1;
    return whole;
  }

  private either(): Expression {
    return this.joined('or', 'either', () => this.joined('and', 'both', () => this.negation()));
  }

  private joined(word: string, is: 'both' | 'either', part: () => Expression): Expression {
    const from = this.next.at;
    const of = [part()];
    while (this.skip(word)) of.push(part());
    return of.length === 1 ? of[0]! : { is, of, place: this.since(from) };
  }

  private negation(): Expression {
    const from = this.next.at;
    let turns = 0;
    while (this.skip('not')) turns += 1;
    const of = this.comparison();
    return turns % 2 === 0 ? of : { is: 'not', of, place: this.since(from) };
  }

  private comparison(): Expression {
    const from = this.next.at;
    const left = this.sum();
    if (this.next.kind !== 'sign' || !COMPARISONS.includes(this.next.text)) return left;
    const sign = this.take().text as ComparisonSign;
    const right = this.sum();
    if (this.next.kind === 'sign' && COMPARISONS.includes(this.next.text)) {
      this.stop('Two comparisons in a row are not understood.', 'Write a <= b and b <= c.');
    }
    return { is: 'comparison', sign, left, right, place: this.since(from) };
  }

  private sum(): Expression {
    return this.chain(['+', '-'], () => this.term());
  }

  private term(): Expression {
    return this.chain(['*', '/'], () => this.factor());
  }

  private chain(signs: readonly ('+' | '-' | '*' | '/')[], part: () => Expression): Expression {
    const from = this.next.at;
    let left = part();
    for (;;) {
      const sign = signs.find((one) => this.is(one));
      if (!sign) return left;
      this.take();
      left = { is: 'arithmetic', sign, left, right: part(), place: this.since(from) };
    }
  }

  private factor(): Expression {
    const from = this.next.at;
    if (this.skip('-')) return { is: 'negative', of: this.factor(), place: this.since(from) };
    if (this.skip('(')) {
      const inner = this.expression();
      this.expect(')', 'Close the parenthesis with ).');
      return inner;
    }
    if (this.next.kind === 'number') return this.amount();
    if (this.next.kind === 'word') return this.named();
    if (this.next.kind === 'end') this.stop('The expression ends too early.', 'Write a number or a fact here.');
    return this.stop(`${quoted(this.next.text)} does not belong here.`, 'Write a number or a fact here.');
  }

  /** `12`, `30 m`, `1 h 10 min`. */
  private amount(): Expression {
    const from = this.next.at;
    let value = Number(this.take().text);
    const unit = this.unit();
    if (!unit) return { is: 'amount', value, dimension: 'plain', bare: true, place: this.since(from) };
    value = tidy(value * unit.size);
    while (unit.dimension === 'time' && this.next.kind === 'number') {
      value += tidy(
        Number(this.take().text) *
          (this.unit()?.size ?? this.stop('A part of a time has no unit.', 'Write it whole, such as 1 h 10 min.')),
      );
    }
    return { is: 'amount', value, dimension: unit.dimension, bare: false, place: this.since(from) };
  }

  private unit() {
    const unit = this.next.kind === 'word' ? UNIT_WORDS.get(this.next.text.toLowerCase()) : undefined;
    if (unit) this.take();
    return unit;
  }

  private named(): Expression {
    const from = this.next.at;
    const word = this.take().text;
    if (word === 'highest' || word === 'lowest') {
      if (this.next.kind !== 'word') this.stop(`A fact is missing after ${word}.`, `Write ${word} ceilingM.`);
      return this.fact(this.take().text, from, word);
    }
    if ((FUNCTION_NAMES as readonly string[]).includes(word) && this.is('('))
      return this.call(word as FunctionName, from);
    if (RESERVED.includes(word))
      this.stop(`${quoted(word)} does not belong here.`, 'Write a number or a fact here.', from);
    return this.fact(word, from, undefined);
  }

  private call(name: FunctionName, from: Place): Expression {
    this.expect('(', `Write ${name}(…).`);
    const of = [this.expression()];
    while (this.skip(',')) of.push(this.expression());
    this.expect(')', 'Close the parenthesis with ).');
    const two = name === 'min' || name === 'max';
    if (two ? of.length < 2 || of.length > 6 : of.length !== 1) {
      this.stop(
        `${name} takes ${two ? 'two values or more' : 'one value'}.`,
        two ? `Write ${name}(a, b).` : `Write ${name}(a).`,
        this.since(from),
      );
    }
    return { is: 'function', name, of, place: this.since(from) };
  }

  private fact(name: string, from: Place, extreme: FactCall['extreme']): Expression {
    const given: FactArgument[] = [];
    let called = false;
    if (this.skip('(')) {
      called = true;
      if (!this.is(')')) {
        do given.push(this.argument());
        while (this.skip(','));
      }
      this.expect(')', 'Close the parenthesis with ).');
    }
    const found = this.qualifiers();
    const bare =
      !called &&
      !extreme &&
      !found.at &&
      found.dive === undefined &&
      found.script === undefined &&
      found.unit === undefined;
    const place = this.since(from);
    return bare ? { is: 'name', name, place } : { is: 'fact', name, arguments: given, extreme, ...found, place };
  }

  private argument(): FactArgument {
    const { next } = this;
    const after = this.tokens[this.at + 1];
    if (
      next.kind === 'word' &&
      (next.text.includes('-') || next.text === next.text.toLowerCase()) &&
      (after?.text === ')' || after?.text === ',') &&
      after.kind === 'sign'
    ) {
      this.take();
      return { is: 'event', name: next.text, place: next.at };
    }
    return this.expression();
  }

  private qualifiers(): Pick<FactCall, 'at' | 'dive' | 'script' | 'unit'> {
    let at: WrittenMoment | undefined;
    let dive: number | undefined;
    let script: string | undefined;
    let unit: string | undefined;
    for (;;) {
      const from = this.next.at;
      const twice = (known: unknown, word: string) => {
        if (known !== undefined) this.stop(`${quoted(word)} is said twice of one fact.`, 'Keep one of the two.', from);
      };
      if (this.skip('at')) {
        twice(at, 'at');
        at = this.moment();
      } else if (this.is('in')) {
        twice(dive, 'in dive');
        dive = this.diveNumber();
      } else if (this.skip('of')) {
        twice(script, 'of');
        if (this.next.kind !== 'word')
          this.stop('The name of a script is missing after of.', 'Write of and the name of a script, such as of fast.');
        script = this.take().text;
      } else if (this.skip('on')) {
        twice(unit, 'on');
        if (this.next.kind !== 'text')
          this.stop(
            'The name of a unit is missing after on.',
            'Write it in quotation marks, such as on "Rental unit".',
          );
        unit = this.take().text;
      } else {
        return { at, dive, script, unit };
      }
    }
  }

  private diveNumber(): number {
    this.expect('in', 'Write in dive 1.');
    this.expect('dive', 'Write in dive and its number, such as in dive 2.');
    const value = this.next.kind === 'number' ? Number(this.take().text) : NaN;
    if (!Number.isInteger(value) || value < 1 || value > 50)
      this.stop('This is not the number of a dive.', 'Write in dive 1, in dive 2 and so on.');
    return value;
  }

  momentAlone(): { moment: WrittenMoment; dive: number | undefined } {
    const moment = this.moment();
    return { moment, dive: this.is('in') ? this.diveNumber() : undefined };
  }

  private moment(): WrittenMoment {
    const from = this.next.at;
    if (this.next.kind === 'number' || this.is('(')) {
      const minutes = this.next.kind === 'number' ? this.amount() : this.factor();
      const direction = this.skip('after') ? 1 : this.skip('before') ? -1 : undefined;
      if (direction) return { is: 'shifted', minutes, direction, from: this.namedMoment(), place: this.since(from) };
      return { is: 'time', minutes, place: this.since(from) };
    }
    return this.namedMoment();
  }

  private namedMoment(): WrittenMoment {
    const from = this.next.at;
    if (this.next.kind !== 'word')
      this.stop('A moment is missing here.', `Write a run time such as 5 min, or one of ${NAMED_MOMENTS.join(', ')}.`);
    const word = this.take().text;
    if (word === 'first') {
      if (this.next.kind !== 'word')
        this.stop('The kind of event is missing after first.', 'Write first ceiling-clears.');
      return { is: 'event', name: this.take().text, place: this.since(from) };
    }
    if ((NAMED_MOMENTS as readonly string[]).includes(word))
      return { is: 'named', name: word as NamedMoment, place: from };
    if (RESERVED.includes(word))
      this.stop(
        `${quoted(word)} is no moment.`,
        `Write a run time such as 5 min, or one of ${NAMED_MOMENTS.join(', ')}.`,
        from,
      );
    // A value drawn for the question, which may be a time.
    const minutes: Expression = { is: 'name', name: word, place: from };
    const direction = this.skip('after') ? 1 : this.skip('before') ? -1 : undefined;
    if (direction) return { is: 'shifted', minutes, direction, from: this.namedMoment(), place: this.since(from) };
    return { is: 'time', minutes, place: from };
  }
}
