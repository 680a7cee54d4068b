import { describe, expect, it } from 'vitest';
import { parseGas, writeGas } from '@/lib/dive/gas-text';

const read = (text: string) => {
  const gas = parseGas(text);
  return gas.ok ? gas.value : gas.mend;
};

describe('a gas', () => {
  it.each([
    ['air', 0.21, 0],
    ['Pure  O2', 1, 0],
    ['32%', 0.32, 0],
    ['33,3 % oxygen', 0.333, 0],
    ['EANx 36', 0.36, 0],
    ['nitrox 40', 0.4, 0],
    ['18/45', 0.18, 0.45],
    ['Trimix 18 / 45', 0.18, 0.45],
    ['tx 10%/70%', 0.1, 0.7],
    ['30/70', 0.3, 0.7],
    ['0/100', 0, 1],
    ['100/0', 1, 0],
  ])('%s is read as %f of oxygen and %f of helium', (text, o2, he) => expect(read(text)).toEqual({ o2, he }));

  it.each([
    ['100.1%', 'Write at most 100%.'],
    ['0/100.1', 'Write at most 100.'],
    ['30/70.1', 'Write oxygen first, then helium, such as 18/45.'],
    ['-5%', 'Write air, oxygen, 32% or 18/45.'],
    ['18/-5', 'Write air, oxygen, 32% or 18/45.'],
    ['32', 'Write 32% for its oxygen.'],
    ['0,32', 'Write 32% for its oxygen.'],
    ['1', 'Write 1% for its oxygen.'],
    ['1.2.3', 'Write air, oxygen, 32% or 18/45.'],
    ['tx 18', 'Write oxygen and helium, such as 18/45.'],
    ['helium', 'Write air, oxygen, 32% or 18/45 (oxygen and helium in percent).'],
  ])('%s is refused: %s', (text, mend) => expect(read(text)).toBe(mend));

  it.each([
    [{ o2: 0.21, he: 0 }, 'air'],
    [{ o2: 1, he: 0 }, 'oxygen'],
    [{ o2: 0.32, he: 0 }, '32%'],
    [{ o2: 0.18, he: 0.45 }, '18/45'],
    [{ o2: 1 / 3, he: 0 }, '33.33333333333333%'],
    [{ o2: 1 / 3, he: 1 / 3 }, '33.33333333333333/33.33333333333333'],
  ])('%j is written so that it reads back as the very same: %s', (gas, text) => {
    expect(writeGas(gas)).toMatch(new RegExp(`^${text.slice(0, 12)}`));
    expect(read(writeGas(gas))).toEqual(gas);
  });
});
