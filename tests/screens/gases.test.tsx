import { fireEvent, render, screen, within } from '@testing-library/react';
import userEvent from '@testing-library/user-event';
import { afterEach, describe, expect, it } from 'vitest';
import GasesPage from '@/app/gases/page';
import { GasBoard } from '@/app/gases/GasBoard';
import { MixFinder } from '@/app/gases/MixFinder';
import { CylinderSum } from '@/app/gases/CylinderSum';
import { SiteControls } from '@/app/gases/SiteControls';
import { useSite } from '@/app/gases/site-store';
import { usePreferences } from '@/app/parts/preferences';
import { cautions } from '@/content/cautions';
import published from '@/content/published/gas-depths.json';
import density from '@/content/published/gas-density.json';

const siteAtFirst = useSite.getState();
afterEach(() => {
  useSite.setState(siteAtFirst);
  usePreferences.getState().setUnits('metric');
});

const type = (label: string, text: string) =>
  fireEvent.change(screen.getByLabelText(label), { target: { value: text } });
/** The cells of a row of the table of gases, by the row's name. */
const row = (name: string | RegExp) =>
  within(screen.getByRole('table', { name: /^Gases at/ }))
    .getAllByRole('row')
    .find((one) => within(one).queryByRole('rowheader', { name }))!
    .querySelectorAll('td');
const number = (cell: Element) => Number.parseFloat(cell.textContent!);

/** The published depths count the surface as 1 bar, the screen as 1.01325: 0.13 m apart at most, in the share of a gas. */
const SURFACE_M = 0.14;

describe('gases side by side', () => {
  it('have the published maximum operating depths of nitrox', () => {
    render(<GasBoard />);
    type('Gases side by side', '32%, 36%');
    const cells = row(/Maximum operating depth, at 1.4 bar/);
    for (const [index, o2] of [0.32, 0.36].entries()) {
      const found = published.deepest.find((one) => one.o2 === o2 && one.po2Bar === 1.4)!;
      expect(Math.abs(number(cells[index]!) - found.depthM)).toBeLessThan(SURFACE_M + 0.05);
    }
  });

  it('have the published equivalent air and narcotic depths, with oxygen narcotic or not', async () => {
    render(
      <>
        <SiteControls />
        <GasBoard />
      </>,
    );
    type('Gases side by side', '32%');
    type('At a depth of', '30 m');
    const ead = published.equivalentAir.find((one) => one.o2 === 0.32)!;
    expect(Math.abs(number(row('Equivalent air depth')[0]!) - ead.equivalentM)).toBeLessThan(SURFACE_M);
    type('Gases side by side', '18/45');
    type('At a depth of', '60 m');
    const end = published.equivalentNarcotic.find((one) => one.o2 === 0.18)!;
    expect(Math.abs(number(row('Equivalent narcotic depth')[0]!) - end.withOxygenM)).toBeLessThan(SURFACE_M);
    await userEvent.click(screen.getByRole('radio', { name: 'Not narcotic' }));
    expect(Math.abs(number(row('Equivalent narcotic depth')[0]!) - end.nitrogenAloneM)).toBeLessThan(SURFACE_M + 0.05);
  });

  it('have the density that the advised marks are quoted at', () => {
    render(<GasBoard />);
    type('Gases side by side', 'air');
    for (const { depthM, gramsPerL } of density.quoted) {
      type('At a depth of', `${depthM} m`);
      // Both are rounded to a decimal: the quoted figure, and ours on the screen.
      expect(Math.abs(number(row('Density, g/L')[0]!) - gramsPerL)).toBeLessThanOrEqual(
        density.tolerances.quoted.value + 0.05 + 1e-9,
      );
    }
  });

  it('say what one buys and costs against the first, and when its oxygen is too much', () => {
    render(<GasBoard />);
    type('Gases side by side', 'air, 36%, 18/45');
    type('At a depth of', '40 m');
    const said = within(screen.getByRole('list', { name: 'What each gas buys and costs' })).getAllByRole('listitem');
    expect(said[0]).toHaveTextContent(
      /^36% against air: \d+ min more without stops.*over 1.6 bar here: it is not for this depth/,
    );
    expect(said[1]).toHaveTextContent(
      /^18\/45 against air: \d+ min less without stops.*narcosis as if .* shallower.*lighter to breathe/,
    );
  });

  it('refuse what is no gas in place, and keep the last gases that made sense', () => {
    render(<GasBoard />);
    type('Gases side by side', '32%');
    type('Gases side by side', '32%, 18/95');
    expect(screen.getByLabelText('Gases side by side')).toHaveAccessibleDescription(/more than 100% together/);
    expect(screen.getByLabelText('Gases side by side')).toBeInvalid();
    expect(row('No-stop time, min')).toHaveLength(1);
    type('Gases side by side', '0/100');
    expect(screen.getByLabelText('Gases side by side')).toHaveAccessibleDescription(/has no oxygen/);
  });

  it('are told in feet where feet are asked for', () => {
    usePreferences.getState().setUnits('imperial');
    render(<GasBoard />);
    type('Gases side by side', '32%');
    // 111 fsw as printed by NOAA; ours in feet of the reference water.
    expect(Math.abs(number(row(/at 1.4 bar/)[0]!) - 111)).toBeLessThanOrEqual(1);
  });
});

describe('the best mix', () => {
  it('is the published one for 60 m', () => {
    render(<MixFinder />);
    const found = published.bestMix.find((one) => one.depthM === 60)!;
    const share = (name: string) => number(within(screen.getByRole('group', { name })).getByText(/^\d+\.\d$/));
    expect(Math.abs(share('Oxygen') - found.o2 * 100)).toBeLessThan(0.1);
    expect(Math.abs(share('Helium') - found.heWithOxygen! * 100)).toBeLessThan(0.1);
  });

  it('says when it can’t be breathed at the surface', () => {
    render(<MixFinder />);
    type('Depth to breathe it at', '100 m');
    type('Oxygen at most', '1.2 bar');
    expect(
      screen.getByText(/It holds less oxygen than is customary above 4\.6 m: you would need another gas/),
    ).toBeInTheDocument();
  });

  it('refuses an oxygen limit that nobody teaches', () => {
    render(<MixFinder />);
    type('Oxygen at most', '3 bar');
    expect(screen.getByLabelText('Oxygen at most')).toHaveAccessibleDescription(/no limit anyone teaches/);
  });
});

describe('a cylinder', () => {
  it('gives the consumption of a logbook line by Boyle’s law, worked by hand', () => {
    render(<CylinderSum />);
    type('Gauge at the start', '200 bar');
    type('Gauge at the end', '80 bar');
    type('Average depth', '10 m');
    type('Time under water', '40 min');
    // 12 L · 120 bar = 1440 L, over 2.01325 bar for 40 min: 17.9 L/min.
    expect(screen.getByText('17.9 L/min')).toBeInTheDocument();
  });

  it('says when the gauges are exchanged', () => {
    render(<CylinderSum />);
    type('Gauge at the end', '240 bar');
    expect(screen.getByText(/exchange the two/)).toBeInTheDocument();
  });
});

describe('the screen of gases', () => {
  it('says the caution of deep courses and sections its sums', () => {
    render(<GasesPage />);
    expect(screen.getByText(cautions.deepCourse)).toBeInTheDocument();
    expect(screen.getAllByRole('heading', { level: 2 }).map((one) => one.textContent)).toEqual([
      'Gases side by side',
      'The best mix for a depth',
      'A cylinder, and what you breathe',
      'Oxygen over time',
      'Tables and a bottom timer',
    ]);
  });
});
