import { Marked, type Tokens } from 'marked';
import temml from 'temml';

export interface Heading {
  /** Anchor of the heading on its page. */
  id: string;
  text: string;
  depth: number;
}

/**
 * Markdown with formulas, as HTML with MathML: $…$ inside a line, and $$…$$ or a $…$ that has a paragraph to itself set
 * on its own. Only for pages made at build time, and only for text that is part of the project: what it is given is
 * trusted. A formula with a mistake stops the build.
 */
export function renderMarkdown(source: string): { html: string; headings: Heading[] } {
  const headings: Heading[] = [];
  const marked = new Marked({
    extensions: formulaExtensions(mathml),
    renderer: {
      heading({ tokens, depth }: Tokens.Heading) {
        const inner = this.parser.parseInline(tokens);
        const text = this.parser.parseInline(tokens, this.parser.textRenderer);
        const id = anchor(text, headings);
        headings.push({ id, text, depth });
        return `<h${depth} id="${id}">${inner}</h${depth}>\n`;
      },
    },
    hooks: {
      // A wide table scrolls inside itself, so that the page never does.
      postprocess: (html) =>
        html
          .replaceAll('<table>', '<div class="scroll" tabindex="0" role="group" aria-label="Table"><table>')
          .replaceAll('</table>', '</table></div>'),
    },
  });
  return { html: marked.parse(source, { async: false }), headings };
}

/** What sets a formula as MathML, by itself on a line of its own or within one. */
export type SetFormula = (formula: string, displayMode: boolean) => string;

/** The two kinds of formula as extensions of the Markdown reader. */
export function formulaExtensions(set: SetFormula) {
  return [
    {
      name: 'displayFormula',
      level: 'block' as const,
      start: (source: string) => source.match(/^\$/m)?.index,
      tokenizer(source: string) {
        const found = /^(?:\$\$([\s\S]+?)\$\$|\$([^$\n]+)\$)[ \t]*(?:\n+|$)/.exec(source);
        const formula = found?.[1] ?? found?.[2];
        return found && formula ? { type: 'displayFormula', raw: found[0], formula: formula.trim() } : undefined;
      },
      renderer: (token: Tokens.Generic) =>
        `<div class="formula" tabindex="0" role="group" aria-label="Formula">${set(token['formula'], true)}</div>\n`,
    },
    {
      name: 'inlineFormula',
      level: 'inline' as const,
      start: (source: string) => source.indexOf('$'),
      tokenizer(source: string) {
        const found = /^\$(?!\s)((?:\\.|[^\\$])+?)(?<!\s)\$(?!\d)/.exec(source);
        return found?.[1] === undefined ? undefined : { type: 'inlineFormula', raw: found[0], formula: found[1] };
      },
      renderer: (token: Tokens.Generic) => set(token['formula'], false),
    },
  ];
}

/** A formula without its inline styles, which only fine-tune it: the pages' policy refuses them, and formulas.css has what is needed. */
export function unstyled(formula: string): string {
  return formula.replace(/ style="[^"]*"/g, '');
}

function mathml(formula: string, displayMode: boolean): string {
  return unstyled(temml.renderToString(formula, { displayMode, throwOnError: true, strict: true }));
}

/** Letters and figures of the heading, joined by dashes; a second one of the same name gets a number. */
function anchor(text: string, before: readonly Heading[]): string {
  const plain = text
    .toLowerCase()
    .replace(/&[a-z0-9#]+;/g, ' ')
    .replace(/[^\p{Letter}\p{Number}]+/gu, '-')
    .replace(/^-|-$/g, '');
  const same = before.filter(({ id }) => id === plain || id.startsWith(`${plain}-`)).length;
  return same === 0 ? plain : `${plain}-${same + 1}`;
}
