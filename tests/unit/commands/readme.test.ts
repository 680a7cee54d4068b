import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { cautions } from '@/content/cautions';
import { EVENT_KINDS } from '@/lib/rules/all';

/** Cells of tables are padded by the formatter. */
const readme = readFileSync('README.md', 'utf8').replaceAll(/ +/g, ' ');

describe('the README', () => {
  it.each(Object.entries(EVENT_KINDS))('says of the event %s what it means', (kind, meaning) => {
    expect(readme).toContain(`| \`${kind}\` | ${meaning} |`);
  });

  it('opens with one paragraph, and gives the caution', () => {
    const [title, job, after] = readme.split('\n\n');
    expect(title).toBe('# Halftime');
    expect(job).toMatch(/^Halftime is a teaching sandbox/);
    expect(after).toMatch(/^>/);
    expect(readme).toContain(cautions.general.split('.')[0]!);
  });
});
