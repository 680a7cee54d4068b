import { act, render, screen, within } from '@testing-library/react';
import userEvent from '@testing-library/user-event';
import { describe, expect, it } from 'vitest';
import { ReadingsPanel } from '@/app/stage/ReadingsPanel';
import { DeskContext } from '@/app/stage/desk-context';
import { createDeskStore } from '@/app/stage/desk-store';
import { pictures } from '@/app/stage/figures/all';
import { overstayed } from '@/content/scenarios/overstayed';
import { setCursor } from './set-cursor';

const LONG = { timeout: 30_000 };

/** The words of each cell, row by row under the head. */
const cellsOf = (table: HTMLElement) =>
  within(table)
    .getAllByRole('row')
    .slice(1)
    .map((row) => Array.from(row.children, (cell) => cell.textContent.replaceAll('\u00a0', ' ')));

async function openDive() {
  const store = createDeskStore({ script: overstayed.script, pictures: ['profile', 'chase', 'log'], covered: [] });
  const [Dive, Chase, Log] = [pictures.profile.Figure, pictures.chase.Figure, pictures.log.Figure];
  render(
    <DeskContext value={store}>
      <Dive />
      <Chase />
      <Log />
      <ReadingsPanel />
    </DeskContext>,
  );
  await userEvent.click(await screen.findByText('Table of the dive', undefined, LONG));
  const table = await screen.findByRole('table', { name: 'The dive' }, LONG);
  const rows = () => cellsOf(table);
  const goTo = (timeS: number) => setCursor(store, timeS);
  return { rows, goTo, store };
}

const reading = (name: string) =>
  screen.getByRole('group', { name }).querySelector('p')!.textContent.replaceAll('\u00a0', ' ');

const columns = { Depth: 1, Ceiling: 2, 'No-stop time': 3, 'Required stop': 4 } as const;

describe('the table behind the dive', () => {
  it.each([240, 900, 1170, 1410])(
    'has a row for now, with what the readings say after %i s and who leads',
    async (timeS) => {
      const { rows, goTo } = await openDive();
      await goTo(timeS);
      const now = rows().filter(([time]) => time!.endsWith(', now'));
      expect(now).toHaveLength(1);
      const [row] = now;
      for (const [name, column] of Object.entries(columns)) {
        const said = reading(name).replaceAll(' ', '').replace('>', 'more than');
        // A stop is told with its minutes, which the tile has under its figure.
        const cell = row![column]!.replace(/^.* min at /, '').replaceAll(' ', '');
        expect(cell, name).toBe(said);
      }
      const chase = screen.getByRole('figure', { name: 'The chase' });
      expect(document.getElementById(chase.getAttribute('aria-describedby')!)).toHaveTextContent(
        `compartment ${row![5]} leads`,
      );
    },
  );

  it('goes from the start to the end in order, with the moment of the cursor in its place', async () => {
    const { rows, goTo } = await openDive();
    const without = rows().length;
    await goTo(777);
    const timesS = rows().map(([time]) => {
      const [minutes, seconds] = time!.replace(', now', '').split(':').map(Number);
      return minutes! * 60 + seconds!;
    });
    expect(timesS).toEqual([...new Set(timesS)].sort((one, other) => one - other));
    expect(timesS).toContain(777);
    expect(rows()).toHaveLength(without + 1);
  });

  it('keeps covered what is covered, and that from which it could be told', async () => {
    const { rows, store } = await openDive();
    await userEvent.click(screen.getByText('Table of the chase'));
    const chase = await screen.findByRole('table', { name: 'The chase' }, LONG);
    const shares = () => cellsOf(chase).map((row) => row[5]!);
    const before = rows();
    expect(shares()[2]).toMatch(/^\d+%$/);
    act(() => store.getState().change({ covered: ['required-stop'] }));
    rows().forEach(([time, depth, ceiling, noStop, stop, leader, events], index) => {
      expect([time, depth]).toEqual(before[index]!.slice(0, 2));
      expect([ceiling, noStop, stop, leader]).toEqual(Array(4).fill('covered'));
      expect(events).toBe(before[index]![6] === '' ? '' : 'Something happens here.');
    });
    expect(shares()).toEqual(Array(16).fill('covered'));
    act(() => store.getState().change({ covered: ['depth'] }));
    rows().forEach(([, depth, ...others], index) => {
      expect(depth).toBe('covered');
      expect(others.slice(0, 4)).toEqual(before[index]!.slice(2, 6));
    });
  });

  it('tells all that the log tells, each at its time', async () => {
    const { rows } = await openDive();
    const log = within(await screen.findByRole('figure', { name: 'What the unit tells' }, LONG))
      .getAllByRole('listitem')
      .map((item) => item.querySelector('button')!.textContent);
    expect(log.length).toBeGreaterThan(5);
    const told = rows().map((row) => row[6]!);
    for (const sentence of log)
      expect(
        told.filter((events) => events.includes(sentence)),
        sentence,
      ).toHaveLength(1);
  });
});
