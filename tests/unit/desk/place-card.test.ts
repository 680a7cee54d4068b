import { describe, expect, it } from 'vitest';
import { clearestCorner } from '@/app/desk/tour/place-card';

const card = { width: 320, height: 230 };
const desktop = { width: 1440, height: 900 };

describe('the corner of the tour’s card', () => {
  it('is the one at the bottom left where nothing is to be seen there', () => {
    expect(clearestCorner(card, desktop, [{ left: 360, top: 220, right: 1190, bottom: 620 }])).toBe('bottom left');
  });

  it('leaves the part that is pointed at to be seen', () => {
    const script = { left: 0, top: 150, right: 335, bottom: 830 };
    const chart = { left: 360, top: 280, right: 1190, bottom: 550 };
    expect(clearestCorner(card, desktop, [script, chart])).toBe('bottom right');
  });

  it('covers least where it cannot help covering something', () => {
    const phone = { width: 390, height: 844 };
    expect(clearestCorner({ width: 358, height: 240 }, phone, [{ left: 0, top: 0, right: 390, bottom: 700 }])).toBe(
      'bottom left',
    );
    expect(clearestCorner({ width: 358, height: 240 }, phone, [{ left: 0, top: 300, right: 390, bottom: 844 }])).toBe(
      'top right',
    );
  });
});
