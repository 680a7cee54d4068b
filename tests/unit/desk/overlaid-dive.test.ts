import { describe, expect, it } from 'vitest';
import { overlaidDive, sayOverlaid } from '@/app/pictures/profile/overlaid-dive';
import { createDeskStore } from '@/app/stage/desk-store';

const dive = (depth: string, stay: string) =>
  `descend to ${depth} at 18 m/min\nstay ${stay}\nascend to surface at 9 m/min\n`;
const desk = (script: string) => createDeskStore({ script, pictures: [], covered: [] });

describe('a second dive laid over the first', () => {
  it('is told apart by what differs for a diver: ceiling, stops, a breach and what is brought up; then depth and time', () => {
    const { scene } = desk(dive('18 m', '10 min')).getState();
    const deep = overlaidDive('The deep one', dive('36 m', '20 min'))!;
    const sentence = sayOverlaid(deep, scene, 'metric');
    // Depth and time by hand: 36 m at 18 and 9 m/min take 2 and 4 min beside the stay, 18 m take 1 and 2.
    expect(sentence).toMatch(
      /^The deep one, dashed: deepest ceiling ([\d.]+) m instead of none; stops owed (\d+) min instead of none; above the ceiling by ([\d.]+) m at most, for (\d+:\d\d) instead of never; on surfacing (\d+)% instead of (\d+)%; depth 36 m instead of 18 m; time 26:00 instead of 13:00\.$/,
    );
    // What is said of the breach is what the ceiling's own figures say, sample by sample.
    const { depthM, timeS } = deep.timeline;
    const above = Array.from(deep.figures.ceilingM, (ceilingM, i) => ceilingM - depthM[i]!);
    const seconds = above.filter((overM, i) => overM > 1e-9 && depthM[i]! > 0).length * (timeS[1]! - timeS[0]!);
    expect(sentence).toContain(`by ${(Math.ceil(Math.max(...above) * 10) / 10).toFixed(1)} m at most`);
    expect(sentence).toContain(
      `for ${Math.floor(seconds / 60)}:${String(Math.round(seconds % 60)).padStart(2, '0')} instead`,
    );
    expect(sayOverlaid(deep, scene, 'imperial')).toContain('depth 118 ft instead of 59 ft');
  });

  it('is said to be the same where it is', () => {
    const { scene } = desk(dive('18 m', '10 min')).getState();
    expect(sayOverlaid(overlaidDive('Its twin', dive('18 m', '10 min'))!, scene, 'metric')).toBe(
      'Its twin, dashed: the same ceiling, stops, supersaturation on surfacing, depth and time.',
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
