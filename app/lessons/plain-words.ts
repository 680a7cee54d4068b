import type { UnitSystem } from '@/lib/quantity/unit-system';

/** The words of a text that has been set, in one system of units. */
export function plainWords(html: string | undefined, system: UnitSystem): string {
  if (html === undefined) return '';
  const other = system === 'metric' ? 'imperial' : 'metric';
  return html
    .replace(new RegExp(`<span class="amount" data-in="${other}">[^<]*</span>`, 'g'), '')
    .replace(/<[^>]*>/g, '')
    .replaceAll('&lt;', '<')
    .replaceAll('&gt;', '>')
    .replaceAll('&quot;', '"')
    .replaceAll('&#39;', '’')
    .replaceAll('&amp;', '&');
}
