import { readFileSync } from 'node:fs';
import { act, fireEvent, render, screen, waitFor, within } from '@testing-library/react';
import userEvent from '@testing-library/user-event';
import { describe, expect, it, vi } from 'vitest';
import { BringScreen } from '@/app/bring/BringScreen';
import { BringSession } from '@/app/bring/bring-session';
import { takeHandOver } from '@/app/parts/hand-over';
import { parseScript } from '@/lib/dive/script';

const samples = [
  { name: 'faults.csv', title: 'Try it', text: readFileSync('content/records/two-dives-with-faults.csv', 'utf8') },
];

function open(more: Parameters<typeof BringScreen>[0]['samples'] = samples) {
  render(<BringScreen samples={more} session={new BringSession()} />);
  return userEvent.setup();
}

describe('work on a file', () => {
  const mapping = {
    separator: ',',
    decimal: '.',
    firstRow: 1,
    columns: [
      { role: 'time', unit: 's' },
      { role: 'depth', unit: 'm' },
    ],
  } as const;

  it('stops reading when it is told to, and says so', async () => {
    const session = new BringSession();
    await session.look(new Blob([Array.from({ length: 60_000 }, (_, i) => `${i},5.0`).join('\n')]));
    const outcome = await session.read(mapping, () => void session.cancel());
    expect(outcome).toEqual({ ok: false, what: 'Reading was stopped.', mend: 'Open the file again to read it.' });
  });

  it('stops searching when it is told to', async () => {
    const session = new BringSession();
    const look = await session.look(new Blob([readFileSync('content/records/quarry-clean.csv')]));
    if (!look.ok || look.kind !== 'csv') throw new Error('not read');
    await session.read(look.mapping, () => undefined);
    await session.make({ chosen: [0], repair: [], intervalsS: [], settings: {} });
    const outcome = await session.explain(
      { water: true, altitude: true, gas: true, memory: true },
      () => void session.cancel(),
    );
    expect(outcome).toMatchObject({ ok: false, what: 'The search was stopped.' });
  });
});

describe('bringing a dive', () => {
  it('tells faults with their rows, mends only what is ticked, and hands the dive to the desk', async () => {
    const user = open();
    await user.click(screen.getByRole('button', { name: 'Try it' }));
    const faults = await screen.findByRole('region', { name: 'What is wrong with it' });
    expect(await within(faults).findByText(/Row 253: the depth is negative/, { selector: 'span' })).toBeVisible();
    expect(await screen.findByText(/To mend it: /)).toBeVisible();
    expect(screen.queryByRole('button', { name: 'Open on the desk' })).toBeNull();

    for (const name of [/Leaps nobody can make/, /Cells that cannot be read/, /Repeated times/, /Negative depths/]) {
      await user.click(within(faults).getByRole('checkbox', { name }));
    }
    await user.click(within(faults).getByRole('checkbox', { name: /Time going backwards/ }));
    const went = vi.spyOn(window.location, 'assign').mockImplementation(() => undefined);
    // A box that cannot be read is gone to first.
    const altitude = await screen.findByRole('textbox', { name: 'Altitude' });
    fireEvent.change(altitude, { target: { value: 'high' } });
    await user.click(await screen.findByRole('button', { name: 'Open on the desk' }));
    expect(altitude).toHaveFocus();
    expect(altitude).toBeInvalid();
    expect(screen.getByRole('alert')).toHaveTextContent(/^Altitude: /);
    expect(went).not.toHaveBeenCalled();
    await user.keyboard('{Escape}');
    await user.click(await screen.findByRole('button', { name: 'Open on the desk' }));

    expect(went).toHaveBeenCalledWith('/desk/');
    const taken = takeHandOver();
    expect(taken?.title).toBe('faults');
    const parsed = parseScript(taken!.script);
    expect(parsed.ok && parsed.dive.steps.some(({ kind }) => kind === 'interval')).toBe(true);
    expect(takeHandOver()).toBeUndefined();
  });

  it('marks each fault on the record where it is, by its number in the list, and as a ring once it is mended', async () => {
    // A minute apart: a spike at the fourth, a depth under zero at the ninth.
    const depths = [0, 10, 20, 38, 20, 20, 20, 10, -2, 0];
    const rows = `time (s),depth (m)\n${depths.map((depth, i) => `${i * 10},${depth}`).join('\n')}`;
    const user = open([{ name: 'small.csv', title: 'Try it', text: rows }]);
    await user.click(screen.getByRole('button', { name: 'Try it' }));
    const faults = await screen.findByRole('region', { name: 'What is wrong with it' });
    const offers = await within(faults).findAllByRole('checkbox');
    expect(offers.map((offer) => offer.parentElement!.querySelector('strong')!.textContent)).toEqual([
      '1Negative depths: 1',
      '2Spikes of the sensor: 1',
    ]);
    const marks = () =>
      [...document.querySelectorAll('figure path[class*="fault"]:not([class*="Tie"])')].map((mark) =>
        /^M([\d.]+),[\d.]+(m\S+)/.exec(mark.getAttribute('d')!)!,
      );
    await waitFor(() => expect(marks()).toHaveLength(2));
    // At 30 s and 80 s of 90.
    const [spike, negative] = marks();
    expect(Number(spike![1]) / Number(negative![1])).toBeCloseTo(30 / 80, 2);
    expect(spike![2]).toBe('m-5,-5l10,10m0,-10l-10,10');
    await user.click(offers[1]!);
    await waitFor(() => expect(marks()[0]![2]).toContain('a5,5'));
    expect(marks()[1]![2]).not.toContain('a5,5');
    expect(within(faults).getByText(/Spikes of the sensor: 1, mended/, { selector: 'strong' })).toBeVisible();
  });

  it('keeps the marks of a record that is mended into two dives, each where it is in its own', async () => {
    // Half a minute apart: time begins again at the eighth; in the second dive a depth under zero after a minute and a half.
    const rows = [0, 6, 12, 12, 12, 6, 0, 0, 5, 10, -2, 10, 10, 0].map((depth, i) => `${(i % 7) * 30},${depth}`);
    const user = open([{ name: 'again.csv', title: 'Try it', text: `time (s),depth (m)\n${rows.join('\n')}` }]);
    await user.click(screen.getByRole('button', { name: 'Try it' }));
    const faults = await screen.findByRole('region', { name: 'What is wrong with it' });
    await user.click(await within(faults).findByRole('checkbox', { name: /Time beginning again/ }));
    const marked = () =>
      screen
        .getAllByRole('figure')
        .map((figure) =>
          [...figure.querySelectorAll('path[class*="fault"]:not([class*="Tie"])')].map((mark) =>
            Number(/^M([\d.]+)/.exec(mark.getAttribute('d')!)![1]),
          ),
        );
    await waitFor(() => expect(marked()).toHaveLength(2));
    const [first, second] = marked();
    expect(first).toEqual([]);
    // Where time begins again, and the depth under zero: at 90 s of the second.
    expect(second![0]).toBe(0);
    const end = screen.getAllByRole('figure')[1]!.querySelector('path[class*="recorded"]')!.getAttribute('d')!;
    const lastX = Math.max(...[...end.matchAll(/M([\d.]+)/g)].map(([, x]) => Number(x)));
    expect(second![1]! / lastX).toBeCloseTo(90 / 180, 1);
  });

  it('asks for the unit nobody can tell from the file, and reads it as answered', async () => {
    const rows =
      'time,depth\n' +
      Array.from({ length: 30 }, (_, i) => `${i * 30},${Math.min(i * 5, 60, (29 - i) * 5)}`).join('\n');
    const user = open([{ name: 'bare.csv', title: 'Try it', text: rows }]);
    await user.click(screen.getByRole('button', { name: 'Try it' }));
    const depth = await screen.findByRole('combobox', { name: 'What is “depth” in?' });
    await user.selectOptions(depth, 'ft');
    await user.selectOptions(screen.getByRole('combobox', { name: 'What is “time” in?' }), 's');
    await user.click(screen.getByRole('button', { name: 'Read it so' }));
    expect(await screen.findByText(/30 samples over 15 min, 18.3 m at the deepest/)).toBeVisible();
  });

  it('shows the first rows as they are written and as they will be read, and changes with what a column is said to be', async () => {
    const rows =
      'Zeit;T1;T2\n' +
      Array.from({ length: 30 }, (_, i) => `0:${String(i).padStart(2, '0')};${i},5;${30 - i}`).join('\n');
    const user = open([{ name: 'two.csv', title: 'Try it', text: rows }]);
    await user.click(screen.getByRole('button', { name: 'Try it' }));
    const preview = await screen.findByRole('region', { name: 'First rows as they will be read' });
    await user.click(within(preview).getByRole('button', { name: /T2/ }));
    const is = screen.getByRole('group', { name: 'The column “T2” is' });
    await user.selectOptions(within(is).getByRole('combobox', { name: 'Meaning of “T2”' }), 'depth');
    await user.selectOptions(within(is).getByRole('combobox', { name: 'Unit of “T2”' }), 'ft');
    // 29 ft are 8.8 m. A meaning is had by one column, so the other one is left out.
    await waitFor(() =>
      expect(within(preview).getByRole('row', { name: /^3 / })).toHaveTextContent('3' + '0:010:01' + '1,5' + '298.8 m'),
    );
    expect(within(preview).getByRole('button', { name: /T1/ })).toHaveTextContent('left out');
    await user.selectOptions(screen.getByRole('combobox', { name: 'What is “Zeit” in?' }), 'm:ss');
    await user.click(screen.getByRole('button', { name: 'Read it so' }));
    expect(await screen.findByText(/30 samples over 0 min, 9.1 m at the deepest/)).toBeVisible();
  });

  it('says so, each time and where to, when nothing was pasted', async () => {
    const user = open();
    await user.click(screen.getByText('Paste text instead'));
    const box = screen.getByRole('textbox', { name: /^Rows of a record/ });
    await user.click(screen.getByRole('button', { name: 'Read the pasted text' }));
    expect(box).toHaveFocus();
    expect(box).toBeInvalid();
    expect(box).toHaveAccessibleDescription(/^Nothing is pasted yet/);
    const said = screen.getByRole('alert');
    await user.click(screen.getByRole('button', { name: 'Read the pasted text' }));
    expect(screen.getByRole('alert')).not.toBe(said);
    await user.type(box, '1');
    expect(box).toBeValid();
  });

  it('says what a file is that it cannot read, and how to mend it', async () => {
    const user = open([{ name: 'x.csv', title: 'Try it', text: '%PDF-1.7' }]);
    await user.click(screen.getByRole('button', { name: 'Try it' }));
    expect(await screen.findByRole('alert')).toHaveTextContent(
      'This is a PDF. Export the dive as UDDF or CSV instead.',
    );
  });

  it('asks for a surface interval the file does not tell, before dives are joined', async () => {
    const text = 'dive,time_s,depth_m\n1,0,0\n1,60,18\n1,660,18\n1,780,0\n2,0,0\n2,60,12\n2,660,12\n2,780,0\n';
    const user = open([{ name: 'x.csv', title: 'Try it', text }]);
    await user.click(screen.getByRole('button', { name: 'Try it' }));
    const box = await screen.findByLabelText('Surface interval before “Dive 2”');
    expect(screen.getByText(/does not tell the surface interval/)).toBeVisible();
    await user.type(box, '1 h 30 min');
    await act(async () => box.blur());
    expect(await screen.findByRole('button', { name: 'Open on the desk' })).toBeVisible();
  });

  it('finds the settings of the unit whose figures the record holds', async () => {
    const text = readFileSync('content/records/quarry-clean.csv', 'utf8');
    const user = open([{ name: 'quarry.csv', title: 'Try it', text }]);
    await user.click(screen.getByRole('button', { name: 'Try it' }));
    // The record is of a quarry at 900 m, in fresh water.
    await user.click(await screen.findByRole('radio', { name: 'fresh' }));
    const altitude = screen.getByLabelText('Altitude');
    fireEvent.change(altitude, { target: { value: '900 m' } });
    fireEvent.blur(altitude);
    for (const name of [/water it is set to/, /altitude it goes by/, /gas it is set to/])
      await user.click(screen.getByRole('checkbox', { name }));
    await user.click(screen.getByRole('button', { name: 'Search for the settings' }));
    const found = await screen.findByRole('group', { name: 'What the search found' });
    expect(found).toHaveTextContent(
      /The unit is explained by a low gradient factor from \d+ to \d+ and a high one (of 85|from 8\d to 8\d)/,
    );
    await user.click(within(found).getByRole('button', { name: 'Take what fits best for the dive' }));
    await waitFor(() => expect(screen.getByLabelText('Gradient factors of the model')).toHaveValue('60/85'));
  });
});
