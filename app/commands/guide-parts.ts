import { factRow } from '@/lib/lesson/facts/fact-row';
import { FACT_GROUPS } from '@/lib/lesson/facts/facts';
import { EVENT_KINDS } from '@/lib/rules/all';
import { drawHouse, importsOf, type SourceFile } from './house-picture';

/** A part of a text for readers that is made from the code, between two marks. */
export interface GuidePart {
  /** The file it stands in, from the root. */
  readonly file: string;
  readonly name: string;
  make(files: readonly SourceFile[]): string;
}

export const GUIDE_PARTS: readonly GuidePart[] = [
  {
    file: 'DEVELOPERS.md',
    name: 'house',
    make: (files) => `\`\`\`text\n${drawHouse(importsOf(files))}\n\`\`\``,
  },
  {
    file: 'content/lessons/README.md',
    name: 'facts',
    make: () =>
      FACT_GROUPS.map(
        ({ title, facts }) =>
          `**${title}**\n\n| fact | unit | meaning |\n| --- | --- | --- |\n${facts.map(factRow).join('\n')}`,
      ).join('\n\n'),
  },
  {
    file: 'README.md',
    name: 'events',
    make: () =>
      `| kind | what happened |\n| --- | --- |\n${Object.entries(EVENT_KINDS)
        .map(([kind, meaning]) => `| \`${kind}\` | ${meaning} |`)
        .join('\n')}`,
  },
];

/**
 * A text with one of its parts made anew.
 *
 * @throws Error where the marks of the part are not in the text.
 */
export function withPart(text: string, name: string, made: string): string {
  const [begin, end] = [`<!-- ${name}: made from the code by npm run guide -->`, `<!-- end of ${name} -->`];
  const [from, to] = [text.indexOf(begin), text.indexOf(end)];
  if (from < 0 || to < from) throw new Error(`The text has no marks “${begin}” and “${end}”.`);
  return `${text.slice(0, from + begin.length)}\n\n${made}\n\n${text.slice(to)}`;
}
