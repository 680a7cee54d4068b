import { Marked, type Tokens } from 'marked';
import temml from 'temml';
import { formulaExtensions, unstyled } from '../parts/markdown';
import { routes } from '../parts/routes';
import { glossaryPath } from '../parts/lesson-paths';
import { escapedText } from '@/lib/files/links/dive-page';

/**
 * The Markdown of a lesson as HTML. What it is given may come from a stranger: raw HTML is shown as it is written, links
 * lead only to terms, lessons and screens of this site, pictures are left out, and a formula that cannot be set is shown
 * as its source.
 *
 * Slots are marked before (see `slotToken`) and filled in the HTML afterwards.
 */
export function renderProse(text: string, lessonPath: (number: number) => string | undefined): string {
  return reader(lessonPath).parse(text, { async: false });
}

/** The same for a text of one paragraph, without the paragraph around it. */
export function renderLine(text: string, lessonPath: (number: number) => string | undefined): string {
  return reader(lessonPath).parseInline(text, { async: false });
}

function reader(lessonPath: (number: number) => string | undefined): Marked {
  return new Marked({
    extensions: formulaExtensions(setFormula),
    renderer: {
      html: ({ text }: Tokens.HTML | Tokens.Tag) => escapedText(text),
      image: ({ text }: Tokens.Image) => escapedText(text),
      code: ({ text }: Tokens.Code) => `<pre><code>${escapedText(text)}</code></pre>\n`,
      // A step has its own heading, so those within a text begin below it.
      heading({ tokens, depth }: Tokens.Heading) {
        const level = Math.min(6, depth + 2);
        return `<h${level}>${this.parser.parseInline(tokens)}</h${level}>\n`;
      },
      link({ href, tokens }: Tokens.Link) {
        const inner = this.parser.parseInline(tokens);
        const address = addressOf(href, lessonPath);
        return address === undefined ? inner : `<a href="${escapedText(address)}">${inner}</a>`;
      },
    },
    hooks: {
      postprocess: (html) =>
        html
          .replaceAll('<table>', '<div class="scroll" tabindex="0" role="group" aria-label="Table"><table>')
          .replaceAll('</table>', '</table></div>'),
    },
  });
}

/** Where a link of a lesson leads; undefined for one that leads nowhere here. */
function addressOf(href: string, lessonPath: (number: number) => string | undefined): string | undefined {
  const [kind, name = ''] = href.split(/:(.*)/s);
  if (kind === 'term' && /^[a-z0-9-]+$/.test(name)) return `${glossaryPath}#${name}`;
  if (kind === 'lesson' && /^\d{1,2}$/.test(name)) return lessonPath(Number(name));
  if (kind === 'page' && Object.hasOwn(routes, name)) {
    const route = routes[name as keyof typeof routes];
    return route.open ? route.path : undefined;
  }
  return undefined;
}

function setFormula(formula: string, displayMode: boolean): string {
  try {
    return unstyled(
      temml.renderToString(formula, {
        displayMode,
        throwOnError: true,
        strict: true,
        trust: false,
        maxSize: [20, 20],
        maxExpand: 200,
      }),
    );
  } catch {
    return `<code>${escapedText(formula)}</code>`;
  }
}
