/** Words someone typed, as Markdown that shows them as they are: no mark, link or value in them means anything. */
export function ownTextAsMarkdown(text: string): string {
  return text.replaceAll(/[\\`*_{}[\]()#+\-.!|<>~&]/g, '\\$&');
}
