import { describe, expect, it } from 'vitest';
import { parseAltitude, printAltitude } from '@/lib/quantity/altitude';
import type { Parsed } from '@/lib/quantity/parsed';
import { parsePercent, percentNumber, printPercent } from '@/lib/quantity/percent';
import { parsePressure, printCylinderPressure, printPressure } from '@/lib/quantity/pressure';
import { parseVolume, printVolume } from '@/lib/quantity/volume';

const value = (parsed: Parsed<number>) => (parsed.ok ? parsed.value : parsed);

describe('altitude', () => {
  it('may lie below sea level', () => {
    expect(value(parseAltitude('-430 m'))).toBe(-430);
    expect(value(parseAltitude('−430 m'))).toBe(-430);
    expect(value(parseAltitude('Sea level'))).toBe(0);
    expect(value(parseAltitude('5000 ft'))).toBe(1524);
  });

  it('asks which unit a bare number is in', () => {
    expect(value(parseAltitude('1500'))).toMatchObject({ ok: false, mend: 'Write 1500 m or 4900 ft.' });
  });

  it('is printed whole', () => {
    expect(printAltitude(-430, 'metric')).toBe('−430 m');
    expect(printAltitude(1524, 'imperial')).toBe('5000 ft');
  });
});

describe('pressure', () => {
  it.each([
    ['1.01325 bar', 1.01325],
    ['1013.25 hPa', 1.01325],
    ['1013.25 mbar', 1.01325],
    ['101.325 kPa', 1.01325],
    ['1 atm', 1.01325],
    // NIST SP 811 (2008), appendix B.8: 1 psi = 6.894757 kPa.
    ['1000 psi', 68.94757293],
  ])('takes %s', (text, bar) => {
    expect(value(parsePressure(text))).toBeCloseTo(bar, 8);
  });

  it('is printed to a hundredth of a bar, or whole in a cylinder', () => {
    expect(printPressure(4.01325, 'metric')).toBe('4.01 bar');
    expect(printPressure(4.01325, 'imperial')).toBe('58.2 psi');
    expect(printCylinderPressure(200, 'imperial')).toBe('2901 psi');
  });

  it('refuses less than nothing and other units', () => {
    expect(value(parsePressure('-1 bar'))).toMatchObject({ ok: false });
    expect(value(parsePressure('3 m'))).toMatchObject({ ok: false, what: '“m” is not a unit of pressure.' });
  });
});

describe('volume', () => {
  it('takes litres and cubic feet', () => {
    for (const text of ['12 L', '12 l', '12 litres', '12000 ml']) expect(value(parseVolume(text))).toBe(12);
    for (const text of ['1 cu ft', '1 cuft', '1 ft³']) expect(value(parseVolume(text))).toBe(28.316846592);
  });

  it('is printed to the litre, or to a tenth when small', () => {
    expect(printVolume(2400, 'metric')).toBe('2400 L');
    expect(printVolume(12, 'metric')).toBe('12.0 L');
    expect(printVolume(2400, 'imperial')).toBe('84.8 cu ft');
  });
});

describe('percentages', () => {
  it('are exactly the fraction nearest to them', () => {
    expect(value(parsePercent('29%'))).toBe(0.29);
    expect(value(parsePercent('85 %'))).toBe(0.85);
    expect(value(parsePercent('12,5 per cent'))).toBe(0.125);
    expect(percentNumber(0.29)).toBe('29');
    expect(percentNumber(0.0005)).toBe('0.05');
    expect(percentNumber(1)).toBe('100');
  });

  it('need their sign', () => {
    expect(value(parsePercent('85'))).toMatchObject({ ok: false, what: '85 what?', mend: 'Write 85%.' });
    expect(value(parsePercent('most'))).toMatchObject({ ok: false });
  });

  it('are printed whole unless asked', () => {
    expect(printPercent(0.856)).toBe('86%');
    expect(printPercent(0.856, 1)).toBe('85.6%');
  });
});
