import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { gzipSync } from 'node:zlib';
import { siteFolder } from '@/app/commands/site/build-site';

const known = new Map<string, { readonly text: string; readonly bytes: number }>();

/** A script of the built site as text, and what it weighs on the way to a browser. */
export function scriptOf(source: string): { readonly text: string; readonly bytes: number } {
  const before = known.get(source);
  if (before) return before;
  const text = readFileSync(join(siteFolder, source), 'utf8');
  const script = { text, bytes: gzipSync(text).length };
  known.set(source, script);
  return script;
}

/** The scripts a page names in its HTML: what is fetched before it answers to anyone. Those for browsers without modules are not. */
export function firstScripts(page: string): string[] {
  const html = readFileSync(join(siteFolder, page, 'index.html'), 'utf8');
  const tags = [...html.matchAll(/<script\b[^>]*\ssrc="([^"?]+)[^"]*"[^>]*>/g)].filter(
    ([tag]) => !/noModule/i.test(tag),
  );
  return [...new Set(tags.map(([, source]) => source!))];
}

/** First-load scripts of a page, gzipped, kB. */
export function firstLoadKB(page: string): number {
  return firstScripts(page).reduce((sum, source) => sum + scriptOf(source).bytes, 0) / 1000;
}
