import { describe, expect, it } from 'vitest';
import { overlaidDive, sayOverlaid } from '@/app/pictures/profile/overlaid-dive';
import { createDeskStore } from '@/app/stage/desk-store';

const dive = (depth: string, stay: string) =>
  `descend to ${depth} at 18 m/min\nstay ${stay}\nascend to surface at 9 m/min\n`;
const desk = (script: string) => createDeskStore({ script, pictures: [], covered: [] });

describe('a second dive laid over the first', () => {
  it('is told apart in words: how much deeper, longer, and what it asks for', () => {
    const { scene } = desk(dive('18 m', '10 min')).getState();
    const sentence = sayOverlaid(overlaidDive('The deep one', dive('36 m', '20 min'))!, scene, 'metric');
    // By hand: 18 m more to go takes 1 min down and 2 min up, and the stay is 10 min more.
    expect(sentence).toMatch(
      /^The deep one, dashed, is 18 m deeper, 13:00 longer, \d+(\.\d)? m deeper in its deepest ceiling, \d+ min more of required stops\.$/,
    );
  });

  it('is said to be the same where it is', () => {
    const { scene } = desk(dive('18 m', '10 min')).getState();
    expect(sayOverlaid(overlaidDive('Its twin', dive('18 m', '10 min'))!, scene, 'metric')).toBe(
      'Its twin, dashed, is the same in depth, time, ceiling and stops.',
    );
  });

  it('is nothing where its script makes no sense', () => {
    expect(overlaidDive('Nonsense', 'descend to somewhere')).toBeUndefined();
  });

  it('is undone like any other change', () => {
    const store = desk(dive('18 m', '10 min'));
    store.getState().change({ overlay: { title: 'Other', script: dive('20 m', '5 min') } });
    store.getState().undo();
    expect(store.getState().overlay).toBeUndefined();
    store.getState().redo();
    expect(store.getState().overlay?.title).toBe('Other');
  });
});
