import { render } from '@testing-library/react';
import { expect, it } from 'vitest';
import { Sketches } from '@/app/model/Sketches';

it('the sketches of the model have the halves of Haldane and the limits of compartment 5 as published', () => {
  render(<Sketches />);
  const [loading, limits] = [...document.querySelectorAll('figure')];
  const percents = [...loading!.querySelectorAll('text')].map(({ textContent }) => textContent);
  expect(percents.filter((text) => text!.endsWith('%'))).toEqual(['50%', '75%', '88%', '94%']);
  // ZH-L16C, compartment 5: a 0.6200 bar, b 0.8126; its limit at no pressure and at 4 bar, and 70% of the way to it.
  const ends = (path: Element) => [...path.getAttribute('d')!.matchAll(/,([\d.]+)/g)].map(([, y]) => Number(y));
  const [limit, gradient, balance] = [...limits!.querySelectorAll('path[class]')]
    .filter((path) => /ceiling|profile/.test(path.getAttribute('class')!))
    .map(ends);
  const perBar = (balance![0]! - balance![1]!) / 4;
  const held = (y: number) => (balance![0]! - y) / perBar;
  expect(held(limit![0]!)).toBeCloseTo(0.62, 1);
  expect(held(limit![1]!)).toBeCloseTo(0.62 + 4 / 0.8126, 1);
  expect(held(gradient![1]!)).toBeCloseTo(4 + 0.7 * (0.62 + 4 / 0.8126 - 4), 1);
});
