import { describe, expect, it } from 'vitest';
import { fromDive, fromPublished, newChain, quantity } from '@/lib/working/chain';

const step = {
  id: 'step:sum' as const,
  title: 'the sum',
  why: 'because',
  expression: 'x + y',
  symbol: 'z',
  result: quantity(3, 'bar'),
  source: 'arithmetic',
};
const x = fromDive('x', { ...quantity(1, 'bar'), meaning: 'one', within: [0, 5] });
const y = fromPublished('y', { ...quantity(2, 'bar'), meaning: 'two', obtained: 'read' });

describe('a chain of steps', () => {
  it('hands each result on under its symbol, with where it comes from', () => {
    const chain = newChain();
    const sum = chain.add({ ...step, values: [x, y] });
    expect(sum).toEqual({
      symbol: 'z',
      value: { value: 3, unit: 'bar', meaning: 'the sum', from: 'step:sum', changeable: false },
    });
    expect(chain.steps[0]!.values).toEqual({
      x: { value: 1, unit: 'bar', meaning: 'one', from: 'dive', changeable: true, within: [0, 5] },
      y: { value: 2, unit: 'bar', meaning: 'two', from: 'published', changeable: false, obtained: 'read' },
    });
  });

  it('refuses two steps of one name', () => {
    const chain = newChain();
    chain.add({ ...step, values: [x, y] });
    expect(() => chain.add({ ...step, values: [x, y] })).toThrow('two steps called step:sum');
  });

  it('refuses two values of one symbol', () => {
    expect(() => newChain().add({ ...step, values: [x, { ...y, symbol: 'x' }] })).toThrow('two values called x');
  });
});
