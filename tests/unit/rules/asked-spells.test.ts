import { describe, expect, it } from 'vitest';
import { askedSpells } from '@/lib/rules/unit/asked-spells';
import { shownAt } from '@/lib/rules/unit/shown';
import { down, stay, up, watched } from './made-dives';

/** Six minutes too long at 30 m, then up in steps. */
const STEPS = [down(30, 100), stay(17 * 60), up(3, 180), stay(8 * 60), up(0, 20), stay(60)];

describe('when a unit asks for a stop', () => {
  it('is from the instant the stop is owed to the one at which nothing is owed, as it shows them', () => {
    const watch = watched(STEPS);
    const spells = askedSpells(watch);
    expect(spells.map(({ by }) => by)).toEqual(['model']);
    const { timeS } = watch.timeline;
    for (let i = 0; i < watch.timeline.length; i += 1) {
      const asked = spells.some(({ fromS, toS }) => fromS <= timeS[i]! && timeS[i]! < toS);
      const { requiredStop, ceilingM } = shownAt(watch, i);
      expect(`${timeS[i]} ${asked}`).toBe(`${timeS[i]} ${requiredStop !== null && ceilingM !== null}`);
    }
  });

  it('is never in gauge mode', () => expect(askedSpells(watched(STEPS, {}, { mode: 'gauge' }))).toEqual([]));

  it('tells what a rule imposes after a fast rise apart from the model, and a lock from both', () => {
    const watch = watched([down(30, 100), stay(17 * 60), up(0, 40), stay(20 * 60)]);
    const spells = askedSpells(watch);
    expect(spells.map(({ by }) => by)).toEqual(expect.arrayContaining(['model', 'lock']));
    for (const { fromS, toS } of spells) expect(toS).toBeGreaterThan(fromS);
    // The lock comes first: while it lasts the unit shows no stop, and none is told here.
    const { timeS, length } = watch.timeline;
    for (let i = 0; i < length; i += 1) {
      const by = spells.filter(({ fromS, toS }) => fromS <= timeS[i]! && timeS[i]! < toS).map((spell) => spell.by);
      if (i < length - 1)
        expect(`${timeS[i]} ${by.includes('lock')}`).toBe(`${timeS[i]} ${shownAt(watch, i).mode === 'locked out'}`);
      if (by.includes('lock')) expect(by).toEqual(['lock']);
    }
  });
});
