import { expect } from 'vitest';
import { parseScript } from '@/lib/dive/script';

const DIVE = [
  'descend to 30 m at 18 m/min # quick',
  'stay 20 min',
  'ascend to 5 m at 9 m/min  # slowly',
  'stay 3 min',
  'ascend to surface in 1 min',
];
export const TEXT = DIVE.join('\n');

/** The lines of an edited script that are not as they were. */
export function changed(edited: string, before = TEXT): string[] {
  expect(parseScript(edited)).toMatchObject({ ok: true });
  const old = before.split('\n');
  return edited.split('\n').filter((line) => !old.includes(line));
}
