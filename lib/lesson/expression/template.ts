import { accepted, quoted, refused, type Parsed } from '../../quantity/parsed';
import type { UnitSystem } from '../../quantity/unit-system';
import { evaluateAmount, type Unanswered } from './evaluate';
import type { Expression } from './expression';
import { factNamed } from '../facts/facts';
import { parseExpression } from './parse-expression';
import { MEASURES } from '../../sayings/measures';
import { FORMATS, formatNamed, formatsFor, printValue } from './print-value';
import type { Amount, World } from './world';

/** A place in a text that a value is put into. */
export interface Slot {
  readonly expression: Expression;
  /** How it is printed. */
  readonly format: string | undefined;
  /** As written, braces and all. */
  readonly written: string;
}

/** A text cut at its slots: one piece more than there are slots. */
export interface Template {
  readonly pieces: readonly string[];
  readonly slots: readonly Slot[];
}

/** A slot with its value in both systems of units. */
export interface Filled {
  readonly metric: string;
  readonly imperial: string;
}

const SLOT = /\{\{([^{}]*)\}\}/g;
const MOST_SLOTS = 60;

/** Cuts a text at its `{{expression | format}}`. */
export function parseTemplate(text: string): Parsed<Template> {
  const pieces: string[] = [];
  const slots: Slot[] = [];
  let at = 0;
  for (const match of text.matchAll(SLOT)) {
    const read = parseSlot(match[1]!, match[0]);
    if (!read.ok) return read;
    pieces.push(spelt(text.slice(at, match.index)));
    slots.push(read.value);
    at = match.index + match[0].length;
  }
  pieces.push(spelt(text.slice(at)));
  if (slots.length > MOST_SLOTS)
    return refused(`This text has ${slots.length} values in it.`, `Put at most ${MOST_SLOTS} into one text.`);
  // Closing braces alone are left be: formulas end with them.
  if (pieces.some((piece) => piece.includes('{{')))
    return refused(
      'Double braces are opened and not closed.',
      'Write {{ and }} around the expression, and nothing but it between.',
    );
  return accepted({ pieces, slots });
}

/** Per cent as every reading spells it, however a lesson has it. */
const spelt = (piece: string) => piece.replace(/(\d) %/g, '$1%');

function parseSlot(inside: string, written: string): Parsed<Slot> {
  const [source = '', format, ...more] = inside.split('|').map((part) => part.trim());
  if (more.length > 0)
    return refused(`${quoted(written)} has more than one |.`, 'Write the expression, one | and the format.');
  if (source === '') return refused(`${quoted(written)} is empty.`, 'Write an expression between the braces.');
  if (format !== undefined && !Object.hasOwn(FORMATS, format)) {
    return refused(
      `${quoted(format)} is not a format that is known here.`,
      `Write one of ${Object.keys(FORMATS).join(', ')}.`,
    );
  }
  const parsed = parseExpression(source);
  if (!parsed.ok) return refused(`In ${quoted(written)}: ${parsed.what}`, parsed.mend);
  return accepted({ expression: parsed.value, format: formOf(parsed.value, format), written });
}

/**
 * The form a value is printed in: the one asked for, or else, of a fact that stands alone, its own. Whatever its form, such
 * a fact is rounded the way its reading is everywhere: no ceiling is told shallower, no stop shorter, no time left longer.
 */
export function formOf(expression: Expression, asked?: string): string | undefined {
  if (expression.is !== 'fact' && expression.is !== 'name') return asked;
  const fact = factNamed(expression.name);
  const form = asked ?? fact?.format;
  const rounds = fact?.measure === undefined ? 'nearest' : MEASURES[fact.measure].rounds;
  return form === undefined || rounds === 'nearest' ? form : `${form.replace(/ (up|down)$/, '')} ${rounds}`;
}

/** The values of a template's slots, or why one of them has none. */
export function fillSlots(
  { slots }: Template,
  world: World,
): { readonly ok: true; readonly value: readonly Filled[] } | Unanswered {
  const filled: Filled[] = [];
  for (const { expression, format, written } of slots) {
    const amount = evaluateAmount(expression, world);
    if (!amount.ok) return { ...amount, what: `In ${quoted(written)}: ${amount.what}` };
    if (format !== undefined && !formatNamed(format)!.of.includes(amount.value.dimension)) {
      const fits = formatsFor(amount.value.dimension).join(', ');
      return {
        ...refused(
          `In ${quoted(written)}: the format ${quoted(format)} does not fit this value.`,
          `Write one of ${fits}.`,
        ),
        cause: 'wording',
      };
    }
    filled.push(printBoth(amount.value, format));
  }
  return accepted(filled) as { ok: true; value: readonly Filled[] };
}

/** A value in both systems of units. */
export function printBoth(amount: Amount, format: string | undefined): Filled {
  return { metric: printValue(amount, 'metric', format), imperial: printValue(amount, 'imperial', format) };
}

/** A text with its values in it, in one system of units. */
export function fillText(
  text: string,
  world: World,
  system: UnitSystem,
): { readonly ok: true; readonly value: string } | Unanswered {
  const template = parseTemplate(text);
  if (!template.ok) return { ...template, cause: 'wording' };
  const filled = fillSlots(template.value, world);
  if (!filled.ok) return filled;
  const { pieces } = template.value;
  return { ok: true, value: pieces.map((piece, i) => piece + (filled.value[i]?.[system] ?? '')).join('') };
}
