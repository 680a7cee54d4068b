import { nearest } from '../../dive/script/nearest';
import { quoted } from '../../quantity/parsed';
import { evaluateAmount, type Unanswered } from '../expression/evaluate';
import type { Expression } from '../expression/expression';
import { parseExpression } from '../expression/parse-expression';
import { partsOf } from '../expression/parts-of';
import type { PlacedFault } from './fault';
import { factNamed } from '../facts/facts';
import { judgeAmount, judgeCondition } from '../questions/judge';
import type { KnownNames } from '../questions/known-names';
import { momentOf } from '../questions/drawing-question';
import { fillSlots, parseTemplate, printBoth, type Slot } from '../expression/template';
import type { Amount, World } from '../expression/world';

type Path = readonly PropertyKey[];

const MOST_FAULTS = 50;
const HTML = /<\/?[a-z][a-z0-9-]*(?:\s[^<>]*)?>/i;
/** Names that stand for what is worked out. */
const OF_AN_ANSWER: ReadonlySet<string> = new Set(['given', 'answer', 'within']);
/** Rounding may take so much of a number: 30 ft/min is told as 9 m/min. */
const ROUNDED_PART = 0.03;
const LINK = /\]\(\s*([^)\s]*)[^)]*\)/g;

/** Gathers what is wrong with a lesson, place by place. */
export class Checker {
  readonly faults: PlacedFault[] = [];
  /** The part of the lesson that is looked at. */
  place: Path = [];

  constructor(readonly known: KnownNames) {}

  fault(path: Path, what: string, mend: string, below?: number): void {
    if (this.faults.length < MOST_FAULTS) this.faults.push({ path, what, mend, ...(below !== undefined && { below }) });
  }

  refused(path: Path, { what, mend }: Pick<Unanswered, 'what' | 'mend'>): void {
    this.fault(path, what, mend);
  }

  /** A name that has to be one of those known. */
  name(path: Path, name: string, names: readonly string[], what: string): void {
    if (names.includes(name)) return;
    const close = nearest(name, names);
    this.fault(
      path,
      `${quoted(name)} is not ${what}.`,
      close ? `Did you mean ${close}?` : `Write one of ${names.join(', ')}.`,
    );
  }

  /** Markdown with values: each slot has one, each link leads somewhere. */
  prose(path: Path, text: string, world: World): void {
    const template = parseTemplate(text);
    if (!template.ok) {
      this.fault(path, template.what, template.mend);
      return;
    }
    const { pieces, slots } = template.value;
    slots.forEach((slot, i) => {
      const filled = fillSlots({ pieces: [], slots: [slot] }, world);
      const below = linesIn(pieces.slice(0, i + 1).join(' '));
      if (!filled.ok) this.fault(path, filled.what, filled.mend, below);
      else {
        this.printedAs(path, slot, world, below);
        this.shownAsNone(path, slot, world, below);
      }
    });
    this.links(path, text);
    const html = HTML.exec(text);
    if (html)
      this.fault(
        path,
        `${quoted(html[0])} looks like HTML, which is not shown.`,
        'Write Markdown.',
        linesIn(text.slice(0, html.index)),
      );
  }

  /** What is written by hand, or drawn for a question, reads as it is: 15 s is not 0 min, and 9.5 min is not 10 min. */
  private printedAs(path: Path, { expression, format, written }: Slot, world: World, below: number): void {
    const chosen = expression.is === 'name' && world.values.has(expression.name) && !OF_AN_ANSWER.has(expression.name);
    if (expression.is !== 'amount' && !chosen) return;
    const amount = evaluateAmount(expression, world);
    if (!amount.ok) return;
    const printed = printBoth(amount.value, format).metric.replaceAll('\u00a0', ' ');
    const read = judgeAmount(printed, world);
    if (!read.ok || read.value.dimension !== amount.value.dimension) return;
    if (Math.abs(read.value.value - amount.value.value) <= Math.abs(amount.value.value) * ROUNDED_PART) return;
    this.fault(path, `${quoted(written)} reads ${quoted(printed)}.`, 'Write a finer format, such as | min 1.', below);
  }

  /** While the way up itself takes up enough gas to need a stop, no screen shows a no-stop time. */
  private shownAsNone(path: Path, { expression, written }: Slot, world: World, below: number): void {
    if (expression.is !== 'fact' || expression.name !== 'noStopMin' || !expression.at) return;
    const left = evaluateAmount(expression, world);
    if (!left.ok || left.value.value === 0) return;
    const stops = evaluateAmount({ ...expression, name: 'stopCount' }, world);
    if (!stops.ok || stops.value.value === 0) return;
    this.fault(
      path,
      `At the moment of ${quoted(written)} screens show none: the way up itself takes up enough gas to need a stop.`,
      'Choose a moment before that, or say “none” and why.',
      below,
    );
  }

  private links(path: Path, text: string): void {
    for (const match of text.matchAll(LINK)) {
      const [kind = '', name = ''] = match[1]!.split(/:(.*)/s);
      const below = linesIn(text.slice(0, match.index));
      if (kind === 'term') this.linked(path, below, name, this.known.terms, 'a term of the glossary');
      else if (kind === 'page') this.linked(path, below, name, this.known.pages, 'a screen');
      else if (kind === 'lesson' ? !/^\d{1,2}$/.test(name) : true) {
        this.fault(
          path,
          `${quoted(match[1]!)} is not a link that is followed here.`,
          'Link to term:ceiling, lesson:4 or page:desk.',
          below,
        );
      }
    }
  }

  private linked(path: Path, below: number, name: string, names: readonly string[], what: string): void {
    if (names.includes(name)) return;
    const close = nearest(name, names);
    this.fault(
      path,
      `${quoted(name)} is not ${what}.`,
      close ? `Did you mean ${close}?` : 'Take one that is there, or leave the link out.',
      below,
    );
  }

  /** A condition that has to make sense. */
  condition(path: Path, source: string, world: World): void {
    const so = judgeCondition(source, world);
    if (!so.ok && so.cause === 'wording') this.refused(path, so);
    else this.possible(path, source);
  }

  /** No fact but a speed, which is negative on the way down, is less than nothing. */
  possible(path: Path, source: string): void {
    const parsed = parseExpression(source);
    if (!parsed.ok || !asksForLessThanNothing(parsed.value)) return;
    this.fault(path, 'Nothing here can be less than 0, so this never holds.', 'Turn the sign round.');
  }

  /** A condition that has to be so. */
  claim(path: Path, source: string, world: World): void {
    const so = judgeCondition(source, world);
    if (!so.ok) this.refused(path, so);
    else if (!so.value) this.fault(path, `This is not so: ${source}.`, 'Change the text, or the dive.');
  }

  /** An amount that has to have a value. */
  amount(path: Path, source: string, world: World): Amount | undefined {
    const amount = judgeAmount(source, world);
    if (amount.ok) return amount.value;
    this.refused(path, amount);
    return undefined;
  }

  /** A moment that has to come about; s since the script began. */
  moment(path: Path, source: string, world: World): number | undefined {
    const timeS = momentOf(source, world);
    if (timeS.ok) return timeS.value;
    this.refused(path, timeS);
    return undefined;
  }
}

function asksForLessThanNothing(expression: Expression): boolean {
  if (expression.is !== 'comparison') return partsOf(expression).some(asksForLessThanNothing);
  const { sign, left, right } = expression;
  if (sign !== '<' || right.is !== 'amount' || right.value !== 0 || !('name' in left)) return false;
  return left.is !== 'function' && left.name !== 'rateMMin' && factNamed(left.name) !== undefined;
}

function linesIn(text: string): number {
  return text.split('\n').length;
}
