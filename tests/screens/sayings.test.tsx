import { render, screen, within } from '@testing-library/react';
import userEvent from '@testing-library/user-event';
import { describe, expect, it } from 'vitest';
import { PrintedReadings } from '@/app/desk/keep/PrintedReadings';
import { BesidePicture } from '@/app/bring/pictures/BesidePicture';
import { DeskContext } from '@/app/stage/desk-context';
import { createDeskStore } from '@/app/stage/desk-store';
import { LogFigure } from '@/app/stage/units/LogFigure';
import { usePreferences } from '@/app/parts/preferences';
import { GAS_ROWS } from '@/app/gases/gas-words';
import type { GasAtDepth } from '@/lib/exposure/gas-comparison';
import { onDesk } from './on-desk';

const NONE = { noStopS: NaN, ceilingM: NaN, stopDepthM: NaN, stopTimeS: NaN };

/** What a unit showed and the model says at one moment, as cells of the table. */
async function besideCells(unit: Partial<typeof NONE>, model: Partial<typeof NONE>): Promise<string[]> {
  const rows = [{ timeS: 754, depthM: 30, unit: { ...NONE, ...unit }, model: { ...NONE, ...model } }];
  const { unmount } = render(<BesidePicture rows={rows} explained={undefined} />);
  await userEvent.click(screen.getByText(/^Table of /));
  const [, row] = within(screen.getByRole('table')).getAllByRole('row');
  const cells = [...row!.querySelectorAll('th, td')].map((cell) => cell.textContent ?? '');
  unmount();
  return cells;
}

describe('beside a recorded dive', () => {
  it('no-stop minutes are those that are there, and ceilings and stops are never told shallower or shorter', async () => {
    expect(await besideCells({ noStopS: 7 * 60 + 59, ceilingM: 0 }, { noStopS: 8 * 60, ceilingM: 0 })).toEqual([
      '12:34',
      '30.0 m',
      '7 min',
      '8 min',
      '–',
      '–',
    ]);
    expect(await besideCells({ noStopS: 100 * 60 }, { noStopS: Infinity })).toEqual([
      '12:34',
      '30.0 m',
      'more than 99 min',
      'more than 99 min',
      '–',
      '–',
    ]);
    expect(
      (await besideCells({ stopDepthM: 6, stopTimeS: 61 }, { ceilingM: 3.04, stopDepthM: 6, stopTimeS: 120 })).slice(4),
    ).toEqual(['stop 6 m, 1.1 min', '3.1 m; stop 6 m, 2 min']);
  });

  it('is told in feet on the scale of stops', async () => {
    usePreferences.setState({ units: 'imperial' });
    const cells = await besideCells({ stopDepthM: 6, stopTimeS: 60 }, { ceilingM: 3.04 });
    usePreferences.setState({ units: 'metric' });
    expect(cells).toEqual(['12:34', '98 ft', '–', '–', 'stop 20 ft, 1 min', '10 ft']);
  });
});

describe('a gas beside others', () => {
  it('has the no-stop minutes that are there', () => {
    const row = GAS_ROWS.find(({ label }) => label.startsWith('No-stop time'))!;
    const say = (noStopMin: number) => row.say({ noStopMin } as GasAtDepth, 'metric');
    expect([7.99, 8, 99, 99.5, Infinity, 0].map(say)).toEqual(['7', '8', '99', '>99', '>99', '0']);
  });
});

describe('the printed sheet', () => {
  it('has a row for every turn of the dive, to the last', () => {
    const script = 'descend to 30 m at 18 m/min\nstay 25 min\nascend to surface at 20 m/min\n';
    render(
      <DeskContext value={createDeskStore({ script, pictures: [], covered: [] })}>
        <PrintedReadings />
      </DeskContext>,
    );
    const [, ...rows] = screen.getAllByRole('row');
    expect(rows.map((row) => [...row.querySelectorAll('td')].slice(0, 2).map((cell) => cell.textContent))).toEqual([
      ['0:00', '0.0 m'],
      ['1:40', '30.0 m'],
      ['26:40', '30.0 m'],
      ['28:10', '0.0 m'],
    ]);
  });

  it('counts a day of several dives per dive, and a stop that going down to it clears as under a minute', () => {
    const dive = 'descend to 36 m at 18 m/min\nstay 8 min 50 s\nascend to surface at 30 m/min\n';
    const script = `gradient factors: 85/85\n${dive}interval 48 h\n${dive}`;
    render(
      <DeskContext value={createDeskStore({ script, pictures: [], covered: [] })}>
        <PrintedReadings />
      </DeskContext>,
    );
    const [heads, ...rows] = screen.getAllByRole('row').map((row) => [...row.children].map((cell) => cell.textContent));
    expect(rows.map(([time]) => time)).toEqual([
      'Dive 1, 0:00',
      'Dive 1, 2:00',
      'Dive 1, 10:50',
      'After dive 1, 0 min',
      'Dive 2, 0:00',
      'Dive 2, 2:00',
      'Dive 2, 10:50',
      'Dive 2, 12:02',
    ]);
    expect(rows.at(-1)![heads!.indexOf('Required stop')]).toBe('under 1 min at 3 m');
  });
});

describe('what a unit tells', () => {
  it('stands in order of time, as each sentence says', () => {
    const script = 'descend to 30 m at 18 m/min\nstay 25 min\nascend to surface at 20 m/min\n';
    onDesk(<LogFigure />, script, ['log']);
    const clocks = screen
      .getAllByRole('listitem')
      .map((item) => /^At (\d+):(\d\d) /.exec(within(item).getAllByRole('button')[0]!.textContent ?? '')!);
    const timesS = clocks.map(([, minutes, seconds]) => Number(minutes) * 60 + Number(seconds));
    expect(new Set(timesS).size).toBeGreaterThan(2);
    expect(timesS).toEqual(timesS.toSorted((one, other) => one - other));
  });
});
