import { act, render, screen, within } from '@testing-library/react';
import { describe, expect, it } from 'vitest';
import { DeskContext } from '@/app/stage/desk-context';
import { createDeskStore } from '@/app/stage/desk-store';
import { ProfileFigure } from '@/app/stage/figures/ProfileFigure';
import { LogFigure } from '@/app/stage/units/LogFigure';

const SCRIPT = 'gas: air\ndescend to 30 m at 18 m/min\nstay 25 min\nascend to surface at 20 m/min\n';

describe('an event on the dive', () => {
  it('has the number, the shape and the sentence it has in the log', async () => {
    const store = createDeskStore({ script: SCRIPT, pictures: ['profile', 'log'], covered: [] });
    render(
      <DeskContext value={store}>
        <ProfileFigure />
        <LogFigure />
      </DeskContext>,
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
