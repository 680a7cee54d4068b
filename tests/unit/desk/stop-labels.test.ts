import { describe, expect, it } from 'vitest';
import { stopLabels } from '@/app/pictures/profile/stop-labels';

const ROOM = { width: 600, height: 300 };
const stop = (text: string, fromX: number, toX: number, y: number) => ({ text, fromX, toX, y });
const line = (x1: number, y1: number, x2: number, y2: number) =>
  [
    { x: x1, y: y1 },
    { x: x2, y: y2 },
  ] as const;

describe('the words of a stop', () => {
  it('stand after it on its line where there is room', () => {
    expect(stopLabels([stop('1 min at 3 m', 200, 220, 60)], [], ROOM)).toEqual([
      { text: '1 min at 3 m', x: 226, y: 60 + 13 * 0.35, anchor: 'start' },
    ]);
  });

  it('step aside for the dive, and go before the stop at the edge of the picture', () => {
    const [under] = stopLabels([stop('1 min at 3 m', 200, 220, 60)], [line(230, 63, 400, 63)], ROOM);
    expect(under!.y).toBeGreaterThan(70);
    const [before] = stopLabels([stop('1 min at 3 m', 520, 540, 60)], [], ROOM);
    expect(before).toMatchObject({ x: 514, anchor: 'end' });
    const upright = [250, 275, 300].map((x) => line(x, 0, x, 300));
    expect(stopLabels([stop('1 min at 3 m', 200, 220, 60)], upright, ROOM)[0]).toMatchObject({ anchor: 'end' });
  });

  it('never lie over a line or over each other; what has no place is left out', () => {
    const crowd = Array.from({ length: 12 }, (_, i) => stop(`${i} min at ${i} m`, 300, 305, 100 + i * 4));
    const shown = stopLabels(crowd, [], ROOM);
    expect(shown.length).toBeGreaterThan(2);
    expect(shown.length).toBeLessThan(12);
    const places = shown.map(({ x, y, anchor }) => `${anchor} ${Math.round(x)} ${Math.round(y / 8)}`);
    expect(new Set(places).size).toBe(places.length);
    const full = Array.from({ length: 60 }, (_, i) => line(0, i * 5, 600, i * 5));
    expect(stopLabels([stop('1 min at 3 m', 200, 220, 60)], full, ROOM)).toEqual([]);
  });
});
