import { describe, expect, it } from 'vitest';
import { shownAt } from '@/lib/rules/unit/shown';
import { unitSayings } from '@/lib/sayings/unit-readings';
import { down, stay, watched } from '../rules/made-dives';

const shown = shownAt(watched([down(30, 100), stay(600)]), 300);

describe('what a unit says of its lock', () => {
  it.each([
    [null, 'not locked'],
    [47 * 3600 + 60, '47 h 01 min'],
    // A minute that is not over is still to wait.
    [47 * 3600 + 1, '47 h 01 min'],
    [59, '1 min'],
  ])('with %s s to go is “%s”', (lockedForS, said) => {
    expect(unitSayings({ ...shown, lockedForS }, 'metric').locked.text).toBe(said);
  });
});
