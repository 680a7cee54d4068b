import { act, render, screen, within } from '@testing-library/react';
import userEvent from '@testing-library/user-event';
import { describe, expect, it } from 'vitest';
import { DeskContext } from '@/app/stage/desk-context';
import { createDeskStore, cursorSample } from '@/app/stage/desk-store';
import { ProfileFigure } from '@/app/stage/figures/ProfileFigure';
import { LogFigure } from '@/app/stage/units/LogFigure';
import { figuresAt } from '@/lib/ascent/figures';
import { printClock } from '@/lib/quantity/duration';
import { onDesk } from './on-desk';

const SCRIPT = 'gas: air\ndescend to 30 m at 18 m/min\nstay 25 min\nascend to surface at 20 m/min\n';

describe('an event on the dive', () => {
  it('has the number, the shape and the sentence it has in the log', async () => {
    onDesk(
      <>
        <ProfileFigure />
        <LogFigure />
      </>,
      SCRIPT,
      ['profile', 'log'],
    );
    await screen.findByRole('slider', { name: /^Point 1$/ });
    const dive = screen.getByRole('figure', { name: 'The dive' });
    const log = screen.getAllByRole('listitem').map((item) => ({
      number: item.querySelector('svg text')!.textContent,
      shape: item.querySelector('svg g')!.getAttribute('class'),
      text: within(item).getAllByRole('button')[0]!.textContent,
    }));
    expect(log.map(({ number }) => number)).toEqual(log.map((_, index) => `${index + 1}`));
    expect(new Set(log.map(({ shape }) => shape)).size).toBe(2);
    const marks = [...dive.querySelectorAll('title')].map((title) => {
      const mark = title.parentElement!;
      return {
        number: mark.querySelector('text')!.textContent,
        shape: mark.querySelector('g[class*="by"]')!.getAttribute('class'),
        text: title.textContent,
      };
    });
    const alone = marks.filter(({ number }) => !number.includes('–'));
    expect(alone.length).toBeGreaterThan(2);
    for (const mark of alone) expect(mark).toEqual(log[Number(mark.number) - 1]);
    const last = marks.at(-1)!.number.split('–').at(-1);
    expect(Number(last)).toBe(log.length);
  });

  it('is, pressed in the log, where the readings show it for the first time, by the clock it is told by', async () => {
    const { store } = onDesk(<LogFigure />, SCRIPT, ['log']);
    const told = await screen.findByRole('button', { name: /a stop is owed/ });
    await userEvent.click(told);
    const { scene, cursorS } = store.getState();
    expect(told).toHaveTextContent(`At ${printClock(cursorS)} a stop is owed`);
    const sample = cursorSample(store.getState());
    const owed = [sample - 1, sample].map(
      (at) => figuresAt(scene.timeline, scene.figures, at).schedule.stops.length > 0,
    );
    expect(owed).toEqual([false, true]);
  });

  it('is at a moment that readings are worked out for, of a dive too long for each second to be one', async () => {
    const { store } = onDesk(
      <LogFigure />,
      'gas: air\ndescend to 30 m at 18 m/min\nstay 25 min\nascend to 6 m at 9 m/min\nstay 9 h\nascend to surface at 20 m/min\n',
      ['log'],
    );
    const { timeline } = store.getState().scene;
    const told = await screen.findAllByRole('button', { name: /^\d+ ?At|At \d/ });
    expect(told.length).toBeGreaterThan(3);
    for (const one of told) {
      await userEvent.click(one);
      expect(timeline.timeS).toContain(store.getState().cursorS);
    }
  });

  it('says no more than that something happens, in sentence and word, while any reading is covered', async () => {
    const store = createDeskStore({ script: SCRIPT, pictures: ['profile'], covered: [] });
    const { container } = render(
      <DeskContext value={store}>
        <ProfileFigure />
      </DeskContext>,
    );
    await screen.findByRole('slider', { name: /^Point 1$/ });
    const marks = () => [...container.querySelectorAll('title')].map((title) => title.parentElement!);
    const written = () => marks().flatMap((mark) => [...mark.querySelectorAll('text')].map((text) => text.textContent));
    const open = marks().length;
    expect(written().some((text) => /[a-z]/.test(text))).toBe(true);
    act(() => store.getState().change({ covered: ['ceiling'] }));
    expect(marks()).toHaveLength(open);
    expect(new Set(marks().map((mark) => mark.querySelector('title')!.textContent))).toEqual(
      new Set(['Something happens here.']),
    );
    for (const text of written()) expect(text).toMatch(/^\d+(–\d+)?$/);
  });
});

describe('the words of planned stops', () => {
  it('keep clear of the points of the dive, under which their minutes would be read wrongly', async () => {
    const stops = [27, 24, 21, 18, 15, 12, 9]
      .map((depthM) => `ascend to ${depthM} m at 9 m/min\nstay 2 min\n`)
      .join('');
    const script = `gas: air\ngradient factors: 30/80\ndescend to 60 m at 18 m/min\nstay 20 min\n${stops}ascend to surface at 9 m/min\n`;
    const store = createDeskStore({ script, pictures: ['profile'], covered: [] });
    store.getState().setCursor(1500);
    const { container } = render(
      <DeskContext value={store}>
        <ProfileFigure />
      </DeskContext>,
    );
    const points = (await screen.findAllByRole('slider', { name: /^Point / })).map((point) => {
      const [, x, y] = /\(([-\d.]+),([-\d.]+)/.exec(point.getAttribute('transform')!)!;
      return { x: Number(x), y: Number(y) };
    });
    const words = [...container.querySelectorAll('g[class*="wayUp"] text')];
    expect(words.length).toBeGreaterThan(1);
    for (const word of words) {
      const at = Number(word.getAttribute('x'));
      const wide = 7.2 * word.textContent.length;
      const left = word.getAttribute('text-anchor') === 'end' ? at - wide : at;
      const foot = Number(word.getAttribute('y'));
      const covered = points.filter(
        ({ x, y }) => x + 6 > left && x - 6 < left + wide && y + 6 > foot - 9 && y - 6 < foot,
      );
      expect(covered, word.textContent).toEqual([]);
    }
  });
});
