import { fireEvent, render, screen, within } from '@testing-library/react';
import userEvent from '@testing-library/user-event';
import { afterEach, describe, expect, it, vi } from 'vitest';
import TeachingTablePage from '@/app/gases/table/page';
import { lookUp } from '@/app/gases/table/look-up';
import { useSite } from '@/app/gases/site-store';
import { cautions } from '@/content/cautions';
import { defaultSettings } from '@/lib/dive/default-settings';
import { planFrom } from '@/lib/exposure/ascent-plan';
import { squareDive, teachingTable } from '@/lib/exposure/teaching-table';

const siteAtFirst = useSite.getState();
afterEach(() => {
  useSite.setState(siteAtFirst);
  vi.unstubAllGlobals();
});

const type = (label: string, text: string) =>
  fireEvent.change(screen.getByLabelText(label), { target: { value: text } });
const table = () => within(screen.getByRole('table'));
const rowOf = (depth: string) =>
  within(
    table()
      .getAllByRole('row')
      .find((one) => within(one).queryByRole('rowheader', { name: new RegExp(`^${depth}`) }))!,
  );

describe('a teaching table', () => {
  it('has the stops the engine asks for, depth by depth and time by time', () => {
    render(<TeachingTablePage />);
    type('Depths', '30, 40 m');
    type('Bottom times', '10, 25 min');
    const stops = planFrom(squareDive(defaultSettings(), 30, 25)).schedule.stops;
    const cells = rowOf('30 m').getAllByRole('cell');
    expect(cells[1]).toHaveTextContent('–');
    for (const { depthM, minutes } of stops) expect(cells[2]).toHaveTextContent(`${depthM} m × ${minutes}`);
    expect(stops.length).toBeGreaterThan(0);
  });

  it('carries its limits, the watermark and the caution', () => {
    const { container } = render(<TeachingTablePage />);
    type('Gradient factors', '40/70');
    expect(screen.getByRole('table')).toHaveTextContent('gradient factors 40/70');
    expect(container.querySelector('[data-watermark]')).toHaveTextContent(cautions.watermark);
    expect(screen.getByText(cautions.deepCourse)).toBeInTheDocument();
  });

  it('takes no 3 m stop where the last stop is at 6 m', async () => {
    render(<TeachingTablePage />);
    expect(screen.getByRole('table')).toHaveTextContent('3 m ×');
    await userEvent.click(screen.getByRole('radio', { name: '6 m' }));
    expect(screen.getByRole('table')).not.toHaveTextContent(/(?<!\d)3 m ×/);
  });

  it('says where its gas has too much oxygen', () => {
    render(<TeachingTablePage />);
    type('Gas', '36%');
    expect(rowOf('33 m').getByText(/oxygen over 1.4 bar/)).toBeInTheDocument();
    expect(rowOf('27 m').queryByText(/oxygen over/)).toBeNull();
  });

  it('refuses depths it can’t read, and keeps the table', () => {
    render(<TeachingTablePage />);
    type('Depths', '18, deep');
    expect(screen.getByLabelText('Depths')).toBeInvalid();
    expect(table().getAllByRole('row').length).toBeGreaterThan(5);
  });

  it('is printed at a press', async () => {
    const print = vi.fn();
    vi.stubGlobal('print', print);
    render(<TeachingTablePage />);
    await userEvent.click(screen.getByRole('button', { name: 'Print the table' }));
    expect(print).toHaveBeenCalledOnce();
  });
});

describe('reading the table with a bottom timer', () => {
  const mins = [10, 20, 30];
  const rows = teachingTable(defaultSettings(), { depthsM: [18, 30], bottomMins: mins });

  it('takes the next deeper row and the next longer column', () => {
    expect(lookUp(rows, mins, 18.1, 20.5)).toMatchObject({
      found: true,
      row: { depthM: 30 },
      bottomMin: 30,
      entry: { bottomMin: 30 },
    });
  });

  it('needs no column within the no-stop time', () => {
    expect(lookUp(rows, mins, 18, 31)).toMatchObject({ found: true, withinNoStop: true, entry: undefined });
  });

  it('finds nothing beyond the table', () => {
    expect(lookUp(rows, mins, 30.1, 5)).toEqual({ found: false, beyond: 'depth' });
    expect(lookUp(rows, mins, 29, 31)).toEqual({ found: false, beyond: 'time' });
  });

  it('is said in a sentence', () => {
    render(<TeachingTablePage />);
    type('Greatest depth on the gauge', '31 m');
    type('Time since leaving the surface', '23 min');
    expect(screen.getByRole('status')).toHaveTextContent(
      '31 m for 23 min is read in the row of 33 m, column of 25 min: you need to stop for',
    );
    type('Greatest depth on the gauge', '60 m');
    expect(screen.getByRole('status')).toHaveTextContent('The table says nothing of it');
  });
});
