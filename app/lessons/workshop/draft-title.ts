/** What a lesson's text says it is called; found without reading all of it, so that a text with faults has a title too. */
export function draftTitle(text: string): string {
  const line = /^title:[ \t]*(.+)$/m.exec(text)?.[1]?.trim() ?? '';
  return line.replace(/^(["'])(.*)\1$/, '$2').slice(0, 80) || 'A lesson without a title';
}
