import { fireEvent, render, screen, waitFor, within } from '@testing-library/react';
import userEvent from '@testing-library/user-event';
import { describe, expect, it } from 'vitest';
import { parseBefore, writeBefore } from '@/app/curves/chosen/before-text';
import { arrivalAt, wishConditions, type CurveWish } from '@/app/curves/chosen/curve-wish';
import { NoStopSection } from '@/app/curves/plates/NoStopSection';
import { useStatus } from '@/app/parts/status';
import { usePreferences } from '@/app/parts/preferences';
import navy from '@/content/published/no-stop-us-navy.json';
import { figuresOf } from '@/lib/ascent/figures';
import { noStopCurve } from '@/lib/curves/no-stop-curve';
import { computeTimeline } from '@/lib/dive/timeline';
import { AIR } from '@/lib/physics/gas';
import { type, slide, openTable, cells, atSea, whole, atTheAtlas } from './at-the-plates';

atTheAtlas();
const wish: CurveWish = {
  gas: AIR,
  gradientFactors: { low: 0.85, high: 0.85 },
  altitudeM: 0,
  arrival: 'settled',
  before: undefined,
};

describe('no-stop time against depth', () => {
  it('reads what the engine says at the cursor, for each curve laid over the others', () => {
    render(<NoStopSection />);
    slide('Depth to read', 24 - 6);
    const read = within(screen.getByRole('list', { name: 'No-stop times at 24 m' })).getAllByRole('listitem');
    expect(read).toHaveLength(3);
    expect(read[0]).toHaveTextContent(whole(noStopCurve(atSea, [24]).minutes[0]!));
    expect(read[1]).toHaveTextContent(whole(noStopCurve({ ...atSea, gas: { o2: 0.32, he: 0 } }, [24]).minutes[0]!));
    const after = wishConditions({ ...wish, before: { depthM: 30, stayS: 1200, surfaceS: 3600 } });
    expect(read[2]).toHaveTextContent(whole(noStopCurve(after, [24]).minutes[0]!));
  });

  it('takes a curve away, adds one, and changes one in place', async () => {
    render(<NoStopSection />);
    await userEvent.click(screen.getByRole('button', { name: 'Remove curve 3' }));
    await userEvent.click(screen.getByRole('button', { name: 'Remove curve 2' }));
    expect(screen.queryByRole('button', { name: 'Remove curve 1' })).not.toBeInTheDocument();
    expect(useStatus.getState().message?.text).toMatch(/^Curve 2 is removed: /);
    await userEvent.click(screen.getByRole('button', { name: 'Add a curve' }));
    expect(useStatus.getState().message?.text).toBe('Curve 2 is added, for now the same as the one before.');
    const second = screen.getByRole('group', { name: 'Curve 2' });
    type('Gas', '36%', second);
    type('Altitude', '2000 m', second);
    const read = within(screen.getByRole('list', { name: /^No-stop times/ })).getAllByRole('listitem');
    const lake = { ...wish, gas: { o2: 0.36, he: 0 }, altitudeM: 2000 };
    expect(read).toHaveLength(2);
    expect(read[1]).toHaveTextContent(whole(noStopCurve(wishConditions(lake), [30]).minutes[0]!));
  });

  it('says what is wrong with a gas and keeps the curve as it was', () => {
    render(<NoStopSection />);
    const first = screen.getByRole('group', { name: 'Curve 1' });
    fireEvent.change(within(first).getByLabelText('Gas'), { target: { value: '140%' } });
    expect(within(first).getByLabelText('Gas')).toHaveAccessibleDescription(/cannot be 140/);
    expect(screen.getByRole('list', { name: /^No-stop times/ })).toHaveTextContent(
      whole(noStopCurve(atSea, [30]).minutes[0]!),
    );
  });

  it('has the same figures in the table behind it', () => {
    render(<NoStopSection />);
    const row = cells(openTable('No-stop time against depth'), /^18 m/);
    expect(row[0]).toBe(whole(noStopCurve(atSea, [18]).minutes[0]!));
  });

  it('counts from leaving the surface when asked', async () => {
    render(<NoStopSection />);
    await userEvent.click(screen.getByRole('radio', { name: 'leaving the surface' }));
    const own = noStopCurve({ ...atSea, descentMMin: 18 }, [30]).minutes[0]!;
    expect(screen.getByRole('list', { name: /^No-stop times/ })).toHaveTextContent(whole(own));
  });

  it('lays a published table beside and tells the differences down to its printed minutes', async () => {
    render(<NoStopSection />);
    await userEvent.click(screen.getByRole('checkbox', { name: 'US Navy, Revision 7' }));
    const printed = navy.revision7.find(({ depthFsw }) => depthFsw === 100)!;
    const table = await screen.findByRole('table', {
      name: new RegExp(`^US Navy, Revision 7 at 100 fsw: ${printed.minutes} min`),
    });
    expect(cells(table, /^Another model/)[0]).toBe(`${printed.minutes}.0`);
    expect(within(table).getAllByRole('row')).toHaveLength(5);
  });

  it('reads in feet where feet are asked for', () => {
    usePreferences.getState().setUnits('imperial');
    render(<NoStopSection />);
    expect(screen.getByRole('slider', { name: 'Depth to read' })).toHaveAttribute(
      'aria-valuetext',
      expect.stringMatching(/ft$/),
    );
    expect(
      within(openTable('No-stop time against depth')).getByRole('rowheader', { name: '100 ft' }),
    ).toBeInTheDocument();
  });

  it('answers why with the working of a dive that has just arrived', async () => {
    render(<NoStopSection />);
    await userEvent.click(screen.getByRole('button', { name: 'Why the no-stop time of curve 1?' }));
    const sheet = await screen.findByRole('dialog', { name: 'Why? No-stop time' });
    expect(sheet).toHaveTextContent('On arriving at 30 m');
    await waitFor(() => expect(sheet).toHaveTextContent(noStopCurve(atSea, [30]).minutes[0]!.toFixed(1)), {
      timeout: 20_000,
    });
  });

  it.each([undefined, 18])('asks why of the very dive the curve is of, descending at %s m/min', (descentMMin) => {
    const repeated: CurveWish = {
      ...wish,
      altitudeM: 1500,
      arrival: 'just arrived',
      before: { depthM: 24, stayS: 1800, surfaceS: 2400 },
    };
    const arrival = arrivalAt(repeated, 21, descentMMin);
    const timeline = computeTimeline(arrival, 1e9);
    const left = figuresOf(timeline, arrival.settings).noStopMin[timeline.length - 1]!;
    const curve = noStopCurve(wishConditions(repeated, descentMMin), [21]).minutes[0]!;
    expect(curve).toBeCloseTo(left + (descentMMin ? 21 / descentMMin : 0), 6);
  });
});

describe('the dive before', () => {
  it('is read and written the same way', () => {
    const read = parseBefore('30 m, 20 min, 1 h 30 min ago');
    expect(read).toEqual({ ok: true, value: { depthM: 30, stayS: 1200, surfaceS: 5400 } });
    expect(parseBefore(writeBefore({ depthM: 30, stayS: 1200, surfaceS: 5400 }, 'metric'))).toEqual(read);
    expect(parseBefore('none')).toEqual({ ok: true, value: undefined });
  });
  it.each([
    '30 m',
    '30 m, 20 min, 1 h',
    '0 m, 20 min, 1 h ago',
    '30 m, 0 min, 1 h ago',
    '30 min, 20 m, 1 h ago',
    '400 m, 20 min, 1 h ago',
    '',
  ])('of “%s” is refused with a way to mend it', (text) => {
    const read = parseBefore(text);
    expect(read.ok).toBe(false);
    expect(!read.ok && read.mend.length).toBeGreaterThan(5);
  });
});
