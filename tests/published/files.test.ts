import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { SCHEMA_OF_FILE, zhl16Schema } from '@/content/published/schema';

const folder = new URL('../../content/published/', import.meta.url);
const read = (name: string): unknown => JSON.parse(readFileSync(new URL(name, folder), 'utf8'));

describe('published values', () => {
  it('has a schema for every file and a file for every schema', () => {
    const files = readdirSync(fileURLToPath(folder)).filter((name) => name.endsWith('.json'));
    expect(files.sort()).toEqual(Object.keys(SCHEMA_OF_FILE).sort());
  });

  it.each(Object.entries(SCHEMA_OF_FILE))('reads %s', (name, schema) => {
    const result = schema.safeParse(read(name));
    expect(result.error?.issues ?? []).toEqual([]);
  });

  it.each(Object.keys(SCHEMA_OF_FILE))('says of every value in %s how it was obtained', (name) => {
    expect(JSON.stringify(read(name))).toMatch(/"obtained":/);
  });

  it('refuses a file with a value that is not a number', () => {
    const file = structuredClone(read('zhl16.json')) as { values: { nitrogen: { b: unknown } }[] };
    file.values[3]!.nitrogen.b = '0.7222';
    expect(zhl16Schema.safeParse(file).success).toBe(false);
  });

  it('refuses a file with one compartment too few', () => {
    const file = structuredClone(read('zhl16.json')) as { values: unknown[] };
    file.values.pop();
    expect(zhl16Schema.safeParse(file).success).toBe(false);
  });

  it('names the seventeen compartments once each, slower and stricter one after another', () => {
    const { values } = zhl16Schema.parse(read('zhl16.json'));
    expect(values.map(({ compartment }) => compartment)).toEqual([
      '1',
      '1b',
      '2',
      '3',
      '4',
      '5',
      '6',
      '7',
      '8',
      '9',
      '10',
      '11',
      '12',
      '13',
      '14',
      '15',
      '16',
    ]);
    for (const [i, row] of values.entries()) {
      const before = values[i - 1];
      if (!before) continue;
      expect(row.nitrogen.halfTimeMin).toBeGreaterThan(before.nitrogen.halfTimeMin);
      expect(row.helium.halfTimeMin).toBeGreaterThan(before.helium.halfTimeMin);
      expect(row.nitrogen.b).toBeGreaterThan(before.nitrogen.b);
      expect(row.helium.b).toBeGreaterThan(before.helium.b);
      expect(row.helium.a).toBeLessThan(before.helium.a);
      for (const a of ['aA', 'aB', 'aC'] as const) expect(row.nitrogen[a]).toBeLessThan(before.nitrogen[a]);
    }
  });
});
