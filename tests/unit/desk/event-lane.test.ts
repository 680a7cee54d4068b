import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { eventLane, roomForWords, type EventVoice } from '@/app/pictures/profile/event-lane';
import { nameY } from '@/app/pictures/chase/name-place';

const at = (...xs: number[]) => xs.map((x) => ({ x, voice: 'byRule' as EventVoice }));

describe('the lane of events', () => {
  it('numbers them in order, each over its moment where there is room', () => {
    expect(eventLane(at(50, 200), 400)).toMatchObject([
      { x: 50, label: '1' },
      { x: 200, label: '2' },
    ]);
  });

  it('keeps the numbers of the log where what came before is out of sight', () => {
    expect(eventLane(at(50), 400, 3)[0]).toMatchObject({ label: '4', from: 4 });
  });

  it('puts events without room for each into one mark, which is the model’s if one of them is', () => {
    const marks = eventLane([...at(10, 60), { x: 64, voice: 'byModel' }, ...at(90)], 75);
    expect(marks.map(({ label, voice }) => [label, voice])).toEqual([
      ['1', 'byRule'],
      ['2–3', 'byModel'],
      ['4', 'byRule'],
    ]);
  });

  it('never lays one mark over another, nor over the edge, and leaves none out', () => {
    fc.assert(
      fc.property(
        fc.array(fc.double({ min: 0, max: 300, noNaN: true }), { minLength: 1, maxLength: 60 }),
        fc.integer({ min: 60, max: 300 }),
        (xs, width) => {
          const marks = eventLane(at(...xs.map((x) => (x * width) / 300).sort((one, other) => one - other)), width);
          expect(marks[0]!.from).toBe(1);
          expect(marks.at(-1)!.to).toBe(xs.length);
          marks.forEach(({ x, width: wide, from }, index) => {
            const next = marks[index + 1];
            expect(x - wide / 2).toBeGreaterThanOrEqual(-1e-9);
            expect(x + wide / 2).toBeLessThanOrEqual(width + 1e-9);
            if (!next) return;
            expect(next.from).toBeGreaterThan(from);
            expect(next.x - next.width / 2).toBeGreaterThanOrEqual(x + wide / 2);
          });
        },
      ),
    );
  });

  it('writes a word beside a mark only as far as the next one', () => {
    const marks = eventLane(at(20, 60, 300), 400);
    expect(roomForWords(marks, ['slow down', 'slow down', 'slow down'], 400)).toEqual([false, true, true]);
  });
});

describe('the name of the mark that leads', () => {
  it('stands over it, and under it where a line would strike it there', () => {
    expect(nameY(100, 14, [], 300)).toBe(81);
    expect(nameY(100, 14, [[70, 75]], 300)).toBe(129);
  });

  it('stands past all lines where both places are struck', () => {
    const lines = [
      [72, 76],
      [120, 122],
    ] as const;
    const y = nameY(100, 14, lines, 300);
    expect([68, 134].some((place) => Math.abs(place - y) < 3)).toBe(true);
    // Never among the numbers of the axis.
    expect(nameY(100, 14, [[70, 90]], 125)).toBeLessThan(70);
  });
});
