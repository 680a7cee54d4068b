import { describe, expect, it } from 'vitest';
import { readingsAsCsv, readingsAsText } from '@/app/commands/readings/print-readings';
import { readingsOf } from '@/app/commands/readings/readings-of';
import { parseScript } from '@/lib/dive/script';

function readingsFrom(...lines: string[]) {
  const parsed = parseScript(lines.join('\n'));
  if (!parsed.ok) throw new Error(JSON.stringify(parsed.errors));
  return readingsOf(parsed.dive, parsed.warnings, 60);
}

const DIVE = ['descend to 30 m at 30 m/min', 'stay 10 min', 'ascend to surface at 30 m/min'];

describe('the readings of gas', () => {
  const readings = readingsFrom('gas: 32%', 'cylinder: back, 12 L, 200 bar', ...DIVE);
  const at = (timeS: number) => readings.samples.find((sample) => sample.timeS === timeS)!;

  it('have oxygen, density and every cylinder at every sample', () => {
    for (const sample of readings.samples) {
      expect(sample.oxygen.pO2Bar).toBeCloseTo(0.32 * sample.ambientBar, 12);
      expect(sample.cylinders).toHaveLength(1);
    }
    // 32% oxygen at 30 m weighs (0.32·31.998 + 0.68·28.014) g/mol · 4.01325 bar / (R · 273.15 K) = 5.18 g/L.
    expect(at(120).gasDensityGL).toBeCloseTo(5.176, 3);
    // A minute down at 2.51325 bar and ten at 4.01325 bar, 20 L/min each, from 12 L.
    expect(at(660).cylinders[0]).toMatchObject({
      name: 'back',
      pressureBar: expect.closeTo(200 - (20 * (2.51325 + 40.1325)) / 12, 9),
    });
    expect(at(660).oxygen.singleFraction).toBeGreaterThan(at(120).oxygen.singleFraction);
  });

  it('have no cylinders where the script has none', () => {
    expect(readingsFrom(...DIVE).samples.every(({ cylinders }) => cylinders.length === 0)).toBe(true);
  });

  it('tell of a cylinder that runs out, in every format', () => {
    const short = readingsFrom('cylinder: small, 5 L, 100 bar', ...DIVE);
    const sentence = /At 6:\d\d the cylinder “small” is empty/;
    expect(short.events).toContainEqual(
      expect.objectContaining({ kind: 'out-of-gas', text: expect.stringMatching(sentence) }),
    );
    expect(readingsAsText(short)).toMatch(sentence);
    expect(readingsAsCsv(short)).toMatch(sentence);
    expect(readingsAsCsv(short)).toContain('"small bar, ideal gas","small bar, real gas"');
  });

  it('stay plain data that JSON can hold', () => {
    expect(JSON.parse(JSON.stringify(readings))).toEqual(readings);
  });
});
