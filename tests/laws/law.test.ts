import { readdirSync, readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { law, SEED } from './law';
import onceFailed from './once-failed.json';

const tests = ['tests/laws', 'tests/unit'].flatMap((folder) =>
  readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .filter((name) => name.endsWith('.test.ts'))
    .map((name) => readFileSync(`${folder}/${name}`, 'utf8')),
);

describe('a law that is broken', () => {
  const below = (most: number) => fc.property(fc.nat(100_000), (drawn) => void expect(drawn).toBeLessThan(most));

  it('is told with the smallest draw that breaks it, the seed to have it again and the line to keep it by', () => {
    expect(() => law(below(50_000), 100)).toThrow(
      new RegExp(`Counterexample: \\[50000\\][^]*SEED=${SEED}[^]*\\{"law":"a law that is broken > is told[^]*"path":`),
    );
    expect(() => law(below(100_001), 100)).not.toThrow();
  });

  it('is told where it takes time to find out as well', async () => {
    const later = fc.asyncProperty(fc.nat(100_000), async (drawn) => void expect(await drawn).toBeLessThan(50_000));
    await expect(law(later, 100)).rejects.toThrow('Counterexample: [50000]');
  });

  it.each(onceFailed.length === 0 ? [] : onceFailed)(
    '$law: what once broke it is drawn for a test there is',
    (kept) => {
      const name = (kept as { law: string }).law.split(' > ').at(-1)!;
      expect(tests.some((text) => text.includes(name))).toBe(true);
    },
  );
});
