import { act, fireEvent, screen, waitFor } from '@testing-library/react';
import userEvent from '@testing-library/user-event';
import { describe, expect, it } from 'vitest';
import { ProfileFigure } from '@/app/stage/figures/ProfileFigure';
import { setCursor } from './set-cursor';
import { onDesk } from './on-desk';

const SCRIPT = `gas: air
descend to 20 m at 20 m/min
stay 20 min
ascend to surface at 10 m/min
`;

async function openDive() {
  const { store } = onDesk(<ProfileFigure />, SCRIPT, ['profile']);
  await waitFor(() => expect(screen.getAllByRole('slider', { name: /^Point/ })).toHaveLength(3));
  const point = (number: number) => screen.getByRole('slider', { name: `Point ${number}` });
  return {
    store,
    point,
    steps: () => store.getState().script.trim().split('\n').slice(1),
    async press(number: number, keys: string) {
      act(() => point(number).focus());
      await userEvent.keyboard(keys);
    },
  };
}

describe('a point of the dive under the keys', () => {
  it('comes to be on the line, at the time cursor', async () => {
    const { store, press, steps, point } = await openDive();
    await setCursor(store, 241);
    await press(2, '{Insert}');
    expect(steps()).toEqual([
      'descend to 20 m at 20 m/min',
      'stay 3 min 1 s',
      'stay 16 min 59 s',
      SCRIPT.split('\n')[3],
    ]);
    expect(point(2)).toHaveFocus();
    expect(point(2)).toHaveAttribute('aria-valuetext', '20 m at 4:01, after 3 min 1 s');
    await setCursor(store, 21 * 60 + 42);
    await press(4, '+');
    expect(steps().slice(-2)).toEqual(['ascend to 13 m at 10 m/min', 'ascend to surface at 10 m/min']);
  });

  it('pulls the end of a stay to another depth, and moves the whole of it by the point where it begins', async () => {
    const { press, steps } = await openDive();
    await press(2, '{ArrowUp}{ArrowUp}');
    expect(steps()[1]).toBe('ascend to 18 m in 20 min');
    await press(1, '{ArrowDown}');
    expect(steps()).toEqual(['descend to 21 m at 20 m/min', 'ascend to 18 m in 20 min', SCRIPT.split('\n')[3]]);
  });

  it('moves far by the page keys, and Home and End go to the first and the last; none of them scrolls', async () => {
    const { press, steps, point } = await openDive();
    await press(1, '{PageUp}');
    expect(steps()[0]).toBe('descend to 15 m at 20 m/min');
    await press(1, '{End}');
    expect(point(3)).toHaveFocus();
    await userEvent.keyboard('{Home}');
    expect(point(1)).toHaveFocus();
    for (const key of ['PageUp', 'PageDown', 'Home', 'End', 'ArrowUp', 'ArrowDown'])
      expect(fireEvent.keyDown(point(1), { key }), key).toBe(false);
  });

  it('leaves keys with Ctrl or Alt to the browser', async () => {
    const { press, steps, point } = await openDive();
    await press(1, '{Control>}{Delete}{/Control}');
    expect(steps()).toHaveLength(3);
    expect(fireEvent.keyDown(point(1), { key: 'Home', ctrlKey: true })).toBe(true);
  });
});
