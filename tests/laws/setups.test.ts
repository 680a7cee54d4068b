import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { diveSchema } from '@/lib/dive/dive';
import { setSetups } from '@/lib/dive/edit/edit-setups';
import { parseScript, writeScript } from '@/lib/dive/script';
import { setupSchema, type Setup } from '@/lib/dive/setup';
import { anyDive } from './dives';
import { law } from './law';

const hundredths = (min: number, max: number) => fc.integer({ min: min * 100, max: max * 100 }).map((n) => n / 100);

const gas = fc
  .tuple(fc.integer({ min: 1, max: 1000 }), fc.integer({ min: 0, max: 1000 }))
  .map(([o2, he]) => ({ o2: o2 / 1000, he: Math.min(he, 1000 - o2) / 1000 }));
const WORDS = [
  'Rental',
  'unit',
  'gas',
  '32%',
  'gauge',
  'mode',
  'altitude',
  '2000 m',
  'depth',
  '103%',
  'fresh before dive 2',
  'ü',
  '🐟',
  ':',
  '=',
];
const name = fc
  .oneof(
    fc.array(fc.constantFrom(...WORDS), { minLength: 1, maxLength: 4 }).map((words) => words.join(' ')),
    fc.string({ unit: 'grapheme', minLength: 1, maxLength: 30 }),
  )
  .map((text) => text.replace(/[,;#"\r\n]/g, '').trim())
  .filter((text) => text !== '' && text.length <= 60);

const anySetup: fc.Arbitrary<Setup> = fc.record(
  {
    name,
    mode: fc.constantFrom('dive' as const, 'gauge' as const),
    gas,
    altitudeM: fc.integer({ min: -450, max: 6000 }),
    water: fc.constantFrom('reference' as const, 'fresh' as const, 'salt' as const),
    gradientFactors: fc
      .tuple(hundredths(0.01, 1), hundredths(0.01, 1))
      .map(([one, other]) => ({ low: Math.min(one, other), high: Math.max(one, other) })),
    depthOffsetM: fc.oneof(
      fc.constant(0),
      fc.double({ min: -10, max: 10, noNaN: true }).filter((m) => Math.abs(m) > 1e-6),
    ),
    depthScale: fc.oneof(fc.constant(1), fc.double({ min: 0.8, max: 1.2, noNaN: true })),
    freshBeforeDives: fc.uniqueArray(fc.integer({ min: 1, max: 50 }), { maxLength: 10 }),
  },
  { requiredKeys: ['name', 'mode', 'depthOffsetM', 'depthScale', 'freshBeforeDives'] },
);
const anySetups = fc.uniqueArray(anySetup, { selector: (setup) => setup.name, minLength: 1, maxLength: 12 });

const DRAWS = 400;

describe('for any setups', () => {
  it('a script names them so that they read back as the very same', () => {
    law(
      fc.property(anyDive, anySetups, (dive, setups) => {
        const named = { ...dive, settings: { ...dive.settings, setups } };
        expect(diveSchema.safeParse(named).success).toBe(true);
        const parsed = parseScript(writeScript(named));
        expect(parsed).toMatchObject({ ok: true });
        if (parsed.ok) expect(parsed.dive.settings).toEqual(named.settings);
      }),
      DRAWS,
    );
  });

  it('editing them into a script says them and nothing else', () => {
    law(
      fc.property(anyDive, anySetups, anySetups, (dive, before, after) => {
        const script = writeScript({ ...dive, settings: { ...dive.settings, setups: before } });
        const parsed = parseScript(setSetups(script, after));
        expect(parsed).toMatchObject({ ok: true });
        if (parsed.ok) expect(parsed.dive.settings).toEqual({ ...dive.settings, setups: after });
      }),
      DRAWS,
    );
  });

  it('what a schema lets through is what the words can say', () => {
    law(
      fc.property(anySetup, (setup) => {
        expect(setupSchema.parse(setup)).toEqual(setup);
      }),
      DRAWS,
    );
  });
});
