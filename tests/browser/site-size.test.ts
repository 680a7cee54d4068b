import { group } from 'd3';
import { describe, expect, it } from 'vitest';
import { siteFolder } from '@/app/commands/site/build-site';
import { filesOf } from '@/app/commands/site/finish-site';
import { readSite } from '@/app/commands/site/site-files';

const MB = 1024 * 1024;

/**
 * The whole site is fetched once, by every machine of a class at the same time, before it works without a network. At
 * 4 MB each, thirty machines on one 50 Mbit/s line have it in about twenty seconds.
 */
const MOST = 4 * MB;

interface Part {
  readonly file: string;
  readonly raw: number;
  readonly sent: number;
}

/** Every file as our server sends it. */
async function parts(): Promise<Part[]> {
  return Promise.all(
    [...readSite(siteFolder)].map(async ([file, { body, packed }]) => ({
      file,
      raw: body.length,
      sent: ((await packed()) ?? body).length,
    })),
  );
}

const sum = (of: readonly Part[], what: 'raw' | 'sent') => of.reduce((total, part) => total + part[what], 0);
const kB = (bytes: number) => `${Math.round(bytes / 1024)} kB`.padStart(9);

/** What the site weighs, kind by kind, and its largest files. */
function told(all: readonly Part[]): string {
  const kinds = group(all, ({ file }) => file.split('.').at(-1)!);
  const byKind = [...kinds]
    .map(([kind, of]) => ({ kind, files: of.length, sent: sum(of, 'sent'), raw: sum(of, 'raw') }))
    .sort((one, other) => other.sent - one.sent);
  const largest = [...all].sort((one, other) => other.sent - one.sent).slice(0, 20);
  return [
    `sent ${kB(sum(all, 'sent'))}, on disk ${kB(sum(all, 'raw'))}`,
    ...byKind.map(({ kind, files, sent, raw }) => `${kB(sent)} of ${kB(raw)}  ${kind} (${files})`),
    'the largest:',
    ...largest.map(({ file, sent, raw }) => `${kB(sent)} of ${kB(raw)}  ${file}`),
  ].join('\n');
}

describe('the whole site', () => {
  it('is under 4 MB as a browser receives it', async () => {
    const all = await parts();
    expect(sum(all, 'sent'), told(all)).toBeLessThan(MOST);
  });

  it('has faces of at most 150 kB, the one that formulas are set in among them', async () => {
    const faces = (await parts()).filter(({ file }) => file.endsWith('.woff2'));
    expect(faces.some(({ file }) => /noto-sans-math/.test(file))).toBe(true);
    expect(sum(faces, 'sent')).toBeLessThanOrEqual(150_000);
  });

  it('holds nothing that no page asks for', () => {
    expect(filesOf(siteFolder).filter((file) => /\.(txt|map|ts)$/.test(file))).toEqual([]);
  });
});
