import { act, screen, within } from '@testing-library/react';
import userEvent from '@testing-library/user-event';
import type { ReactNode } from 'react';
import { afterEach, describe, expect, it, vi } from 'vitest';
import { ExposureReadings } from '@/app/stage/gas/ExposureReadings';
import { HeliumFigure } from '@/app/stage/gas/HeliumFigure';
import { OxygenFigure } from '@/app/stage/gas/OxygenFigure';
import { SupplyFigure } from '@/app/stage/gas/SupplyFigure';
import { ProfileFigure } from '@/app/stage/figures/ProfileFigure';
import { LogFigure } from '@/app/stage/units/LogFigure';
import { cautions } from '@/content/cautions';
import { scenarios } from '@/content/scenarios/scenarios';
import { ISOBARIC_CAUTION } from '@/lib/exposure/isobaric-switch';
import { setCursor } from './set-cursor';
import { onDesk, openDisclosure } from './on-desk';

afterEach(() => vi.unstubAllGlobals());

const desk = (part: ReactNode, ...lines: string[]) => onDesk(part, lines.join('\n'));
const staged = scenarios.find(({ id }) => id === 'staged')!.script;

// 12 L at 200 bar, 20 L/min: 12 · (201.01325 − 3.01325) = 2376 L may be drawn at 20 m. The descent takes 20 · 2.01325 L,
// then each minute 20 · 3.01325 L: empty 38.757 min later, at 39:45 as an ideal gas.
const RUN_OUT = [
  'cylinder: back, 12 L, 200 bar, air',
  'consumption: 20 L/min',
  'descend to 20 m at 20 m/min',
  'stay 45 min',
  'ascend to surface at 10 m/min',
];

describe('oxygen on the desk', () => {
  it('uses the whole single exposure in the 45 min NOAA allows at 1.6 atm', async () => {
    // 1.6 atm is 1.6212 bar: oxygen at 6.0795 m under 1.01325 bar.
    desk(<OxygenFigure />, 'gas: oxygen', 'descend to 6.0795 m in 3 s', 'stay 45 min', 'ascend to surface in 3 s');
    openDisclosure(/^Table of /);
    const stay = within(await screen.findByRole('table', { name: 'Oxygen' })).getAllByRole('row')[2]!;
    expect(stay).toHaveTextContent('oxygen');
    expect(stay).toHaveTextContent('100%');
  });

  it('tells a day dive by dive, says what is common practice, and carries the caution', () => {
    desk(
      <OxygenFigure />,
      'gas: 50%',
      'descend to 18 m at 18 m/min',
      'stay 30 min',
      'ascend to surface at 9 m/min',
      'interval 90 min',
      'descend to 18 m at 18 m/min',
      'stay 30 min',
      'ascend to surface at 9 m/min',
    );
    const rows = within(screen.getByRole('table', { name: 'What each dive adds' })).getAllByRole('row');
    expect(rows).toHaveLength(3);
    expect(screen.getByText(/halve every 90 min: common practice, no source/)).toBeInTheDocument();
    expect(screen.getByText(cautions.deepCourse)).toBeInTheDocument();
  });

  it('follows the cursor in its sentence', async () => {
    const { store } = desk(
      <OxygenFigure />,
      'gas: 32%',
      'descend to 30 m at 30 m/min',
      'stay 10 min',
      'ascend to surface at 10 m/min',
    );
    await setCursor(store, 300);
    // 0.32 · 4.01325 bar.
    expect(screen.getByRole('figure', { name: 'Oxygen' })).toHaveAccessibleDescription(
      /At 5:00 you breathe oxygen at 1\.28 bar/,
    );
  });
});

describe('cylinders on the desk', () => {
  it('tell when the gas runs out, as an ideal gas at the moment worked by hand', () => {
    desk(<SupplyFigure />, ...RUN_OUT);
    const told = within(screen.getByRole('list', { name: 'What happens to the gas' }));
    expect(
      told.getByText(/the cylinder “back” is empty: you can’t draw any more from it at 20 m, and no other air is left/),
    ).toHaveTextContent('as an ideal gas it would last until 39:45');
  });

  it('put the moment into the log and on the dive', async () => {
    desk(
      <>
        <LogFigure />
        <ProfileFigure />
      </>,
      ...RUN_OUT,
    );
    expect(screen.getByRole('button', { name: /the cylinder “back” is empty/ })).toBeInTheDocument();
    expect(await screen.findByText(/the cylinder “back” is empty/, { selector: 'title' })).toBeInTheDocument();
  });

  it('are added, changed and taken away in the script, and undone', async () => {
    const { store } = desk(
      <SupplyFigure />,
      'descend to 20 m at 20 m/min',
      'stay 10 min',
      'ascend to surface at 10 m/min',
    );
    await userEvent.click(screen.getByRole('button', { name: 'Add a cylinder of air' }));
    expect(store.getState().script).toContain('cylinder: back, 24 L at 232 bar, 200 bar, air');
    const size = screen.getByLabelText('Size');
    await userEvent.clear(size);
    await userEvent.type(size, '12 L at 232 bar{Enter}');
    expect(store.getState().script).toContain('cylinder: back, 12 L at 232 bar, 200 bar, air');
    const fill = screen.getByLabelText('Filled to');
    await userEvent.clear(fill);
    await userEvent.type(fill, '300 bar{Enter}');
    expect(screen.getByLabelText('Filled to')).toHaveAccessibleDescription(/more than the cylinder’s working pressure/);
    expect(store.getState().script).toContain('200 bar, air');
    await userEvent.click(screen.getByRole('button', { name: 'Remove back' }));
    expect(store.getState().script).not.toContain('cylinder');
    act(() => store.getState().undo());
    expect(store.getState().script).toContain('cylinder: back, 12 L');
  });

  it('write breathing by phase and the stress factor into the script', async () => {
    const { store } = desk(<SupplyFigure />, ...RUN_OUT);
    const stops = screen.getByLabelText('At stops');
    await userEvent.clear(stops);
    await userEvent.type(stops, '15 L/min{Enter}');
    const stress = screen.getByLabelText('Stress factor');
    await userEvent.clear(stress);
    await userEvent.type(stress, '1.5{Enter}');
    expect(store.getState().script).toContain('consumption at stops: 15 L/min');
    expect(store.getState().script).toContain('stress factor: 1.5');
  });

  it('give the reserve of two divers and the turn pressure by the rule chosen', async () => {
    desk(
      <SupplyFigure />,
      'cylinder: back, 24 L at 232 bar, 210 bar, air',
      'descend to 20 m at 20 m/min',
      'stay 10 min',
      'ascend to surface at 10 m/min',
    );
    // A minute at 3.01325 bar and 2 min and 13 s up at 9 m/min, through 2.01325 bar on average; two divers, twice as fast.
    const litres = 4 * 20 * (3.01325 + (20 / 9) * 2.01325);
    expect(screen.getByRole('table', { name: 'What two divers need' })).toHaveTextContent(`${Math.round(litres)} L`);
    await userEvent.click(screen.getByRole('radio', { name: 'thirds' }));
    expect(screen.getByText(/“back”: turn at 140 bar/)).toBeInTheDocument();
  });

  it('take the consumption of a logged dive into the script', async () => {
    const { store } = desk(
      <SupplyFigure />,
      'cylinder: back, 12 L, 200 bar, air',
      'descend to 20 m at 20 m/min',
      'stay 28 min',
      'ascend to surface at 20 m/min',
    );
    await userEvent.click(screen.getByRole('button', { name: /^Use .* in the script$/ }));
    expect(store.getState().script).toMatch(/consumption: \d+(\.\d)? L\/min/);
  });
});

describe('helium beside nitrogen on the desk', () => {
  it('names each compartment by its two published half-times', () => {
    desk(<HeliumFigure />, staged);
    expect(screen.getByRole('option', { name: '1, 5 min, helium 1.88 min' })).toBeInTheDocument();
    expect(screen.getByRole('option', { name: '16, 635 min, helium 240.03 min' })).toBeInTheDocument();
  });

  it('says what the model hints at in a switch, and that it can’t tell more', () => {
    desk(<HeliumFigure />, staged);
    expect(
      screen.getByText(/you go from 18\/45 to 50% at 21 m.*more than the fifth that is commonly allowed/),
    ).toBeInTheDocument();
    expect(screen.getByText(ISOBARIC_CAUTION)).toBeInTheDocument();
  });

  it('says so when there is no helium', () => {
    desk(<HeliumFigure />, 'descend to 20 m at 20 m/min', 'stay 10 min', 'ascend to surface at 10 m/min');
    expect(screen.getByRole('figure', { name: 'Helium and nitrogen' })).toHaveAccessibleDescription(
      /^No helium is breathed/,
    );
  });
});

describe('readings of oxygen, density and the cylinder', () => {
  it('are worked out once asked for, and can be covered', async () => {
    const { store } = desk(
      <ExposureReadings />,
      'gas: 32%',
      'cylinder: back, 12 L, 200 bar, 32%',
      'descend to 40 m at 40 m/min',
      'stay 5 min',
      'ascend to surface at 10 m/min',
    );
    act(() => {
      store.getState().setCursor(120);
      store.getState().change({ covered: ['gas-density'] });
    });
    openDisclosure('Oxygen, density, cylinder');
    // 0.32 · 5.01325 bar.
    expect(await screen.findByRole('group', { name: 'Oxygen pressure' })).toHaveTextContent(/1\.60bar.*over 1\.6/);
    expect(screen.getByRole('group', { name: 'Gas density' })).not.toHaveTextContent('g/L');
    expect(screen.getByRole('group', { name: 'Cylinder' })).toHaveTextContent('“back”, 32%');
  });
});
