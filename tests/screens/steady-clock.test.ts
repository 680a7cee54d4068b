import { describe, expect, it } from 'vitest';
import { steadyClock } from '@/app/bench/steady-clock';

describe('the clock of a live run', () => {
  it('goes on from where it was when the computer’s clock is put back an hour or a year', () => {
    let wallS = 1_000_000;
    const clock = steadyClock(() => wallS);
    expect(clock.nowS(0)).toBe(1_000_000);
    wallS += 30;
    expect(clock.nowS(1_000_000)).toBe(1_000_030);
    for (const backS of [3600, 365 * 86_400]) {
      const beforeS = clock.nowS(0);
      wallS -= backS;
      expect(clock.nowS(0)).toBe(beforeS);
      wallS += 10;
      expect(clock.nowS(0)).toBe(beforeS + 10);
    }
    expect(clock.putBackS()).toBe(3600 + 365 * 86_400);
  });

  it('goes on from the last mark of a run that was opened again with the clock put back', () => {
    let wallS = 1_000_000;
    const clock = steadyClock(() => wallS);
    expect(clock.nowS(1_003_600)).toBe(1_003_600);
    wallS += 5;
    expect(clock.nowS(1_003_600)).toBe(1_003_605);
  });
});
