import { act, fireEvent, screen, waitFor, within } from '@testing-library/react';
import userEvent from '@testing-library/user-event';
import { beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { ChaseFigure } from '@/app/stage/figures/ChaseFigure';
import { ReadingsPanel } from '@/app/stage/ReadingsPanel';
import { UnitsFigure } from '@/app/stage/units/UnitsFigure';
import { useOpenWhy } from '@/app/parts/working/open-why';
import { usePreferences } from '@/app/parts/preferences';
import { cautions } from '@/content/cautions';
import { loadTypesetter } from '@/lib/working/formula';
import { setCursor } from './set-cursor';
import { onDesk } from './on-desk';

const SCRIPT = `water: reference
gradient factors: 85/85
gas: air
setup: Nitrox unit, gas 32%

descend to 30 m at 20 m/min
stay 10 min
ascend to 5 m at 9 m/min
stay 3 min
ascend to surface at 9 m/min
`;

async function openDesk() {
  const { store } = onDesk(
    <>
      <ReadingsPanel />
      <UnitsFigure />
      <ChaseFigure />
    </>,
    SCRIPT,
    ['units', 'chase'],
  );
  await setCursor(store, 90);
  return store;
}

// Loaded by the first question; asked for here, so that no test has to wait for it.
beforeAll(async () => {
  await import('@/app/stage/why/DeskWorking');
  await loadTypesetter();
}, 120_000);
beforeEach(() => {
  useOpenWhy.getState().close();
  usePreferences.setState(usePreferences.getInitialState(), true);
});

const reading = (label: string) => screen.getByRole('group', { name: label });
const ask = (name: string) => userEvent.click(screen.getByRole('button', { name }));
/** The sheet, once its long part has followed its head. */
async function sheet(): Promise<HTMLElement> {
  const found = await screen.findByRole('dialog');
  await waitFor(() => expect(within(found).queryByText('Working it out…')).toBeNull());
  return found;
}

/** The formulas have come once there is mathematics in the sheet. */
async function typeset(working: HTMLElement) {
  await act(async () => {
    for (let tries = 0; tries < 400 && !working.querySelector('math'); tries += 1)
      await new Promise((resolve) => setTimeout(resolve, 25));
  });
  expect(working.querySelector('math')).not.toBeNull();
}

/**
 * 30 m on air at arrival, after 1.5 min of descent, by hand from the published 5 min half-time, a = 1.1696, b = 0.5578 of
 * compartment 1b, by Schreiner's and Haldane's equations and the limit at the surface under a gradient factor.
 */
function figuresByHand(halfTimeMin: number, gf = 0.85, { a, b } = { a: 1.1696, b: 0.5578 }) {
  const k = Math.LN2 / halfTimeMin;
  const [lungs, settled, rate] = [(4.01325 - 0.0627) * 0.79, (1.01325 - 0.0627) * 0.79, 20 * 0.1 * 0.79];
  const tension = settled + rate * (1.5 - 1 / k) + (rate / k) * Math.exp(-k * 1.5);
  const limit = 1.01325 + gf * (a + 1.01325 / b - 1.01325);
  return { tension, lungs, limit, minutes: Math.log((lungs - tension) / (lungs - limit)) / k };
}

function noStopByHand(...given: Parameters<typeof figuresByHand>): number {
  return figuresByHand(...given).minutes;
}

describe('asking why', () => {
  it('opens the working of a reading in place, with its steps, their sources and what the model does not know', async () => {
    await openDesk();
    await ask('Why this no-stop time?');
    const working = await sheet();
    expect(working).toHaveAccessibleName('Why? No-stop time');
    const { tension, lungs, limit } = figuresByHand(5);
    expect(working).toHaveTextContent(
      `${tension.toFixed(2)} bar held, → ${lungs.toFixed(2)} bar in your lungs, → ${limit.toFixed(2)} bar tolerated at the surface, → `,
    );
    expect(working).toHaveTextContent(`${noStopByHand(5).toFixed(2).replace(/0$/, '')} min (compartment 1)`);
    const steps = within(working).getByRole('region', { name: 'Steps' });
    for (const title of [
      'Pressure around you',
      'Nitrogen pressure in your lungs',
      'What this compartment tolerates at the surface',
      'No-stop time',
    ]) {
      expect(
        within(steps).getByRole('heading', { level: 4, name: new RegExp(`^\\d+\\. ${title}$`) }),
      ).toBeInTheDocument();
    }
    expect(steps).toHaveTextContent('Source: ');
    expect(within(steps).getByText(/How it got there: \d+ steps/)).toBeInTheDocument();
    expect(working).toHaveTextContent(cautions.unknown);
    expect(working).toHaveTextContent(cautions.general);
  });

  it('sets each formula as mathematics, in symbols and with the numbers put in', async () => {
    await openDesk();
    await ask('Why this no-stop time?');
    const working = await sheet();
    await typeset(working);
    const formula = within(working).getByRole('group', { name: 'Formula: pressure around you' });
    // In symbols p = p + w · d, and with numbers the same and what comes of it, each piece where a line may break.
    const pieces = [...formula.querySelectorAll('math')].map((math) => math.textContent);
    expect(pieces).toHaveLength(4 + 5);
    expect(pieces.at(-1)).toMatch(/^=4\.01325/);
  });

  it('shows all sixteen and marks the one the reading comes from', async () => {
    await openDesk();
    await ask('Why this no-stop time?');
    const table = within(await sheet()).getByRole('table');
    expect(within(table).getAllByRole('row')).toHaveLength(17);
    expect(within(table).getByRole('rowheader', { name: /this one/ })).toHaveTextContent('1b');
    // One number of decimals in a column, so that they line up.
    const halfTimes = within(table)
      .getAllByRole('row')
      .slice(1)
      .map((row) => within(row).getAllByRole('cell')[0]!.textContent);
    expect(halfTimes.slice(0, 4)).toEqual(['5.0', '8.0', '12.5', '18.5']);
  });

  it('closes on Escape and on its button, and gives the focus back to where it was asked', async () => {
    await openDesk();
    const button = screen.getByRole('button', { name: 'Why this ceiling?' });
    await userEvent.click(button);
    await userEvent.click(within(await sheet()).getByRole('button', { name: 'Close' }));
    expect(screen.queryByRole('dialog')).not.toBeInTheDocument();
    expect(button).toHaveFocus();
    await userEvent.click(button);
    fireEvent.keyDown(within(await sheet()).getByRole('button', { name: 'Close' }), { key: 'Escape' });
    expect(screen.queryByRole('dialog')).not.toBeInTheDocument();
    expect(button).toHaveFocus();
  });

  it('answers one question at a time', async () => {
    await openDesk();
    await ask('Why this no-stop time?');
    await sheet();
    await ask('Why this ceiling?');
    expect(await sheet()).toHaveAccessibleName('Why? Ceiling');
    expect(screen.getAllByRole('dialog')).toHaveLength(1);
  });

  it('follows the time cursor, and goes away when its reading is covered', async () => {
    const store = await openDesk();
    await ask('Why this no-stop time?');
    const before = (await sheet()).textContent;
    await setCursor(store, 400);
    expect((await sheet()).textContent).not.toBe(before);
    act(() => store.getState().change({ covered: ['no-stop'] }));
    expect(screen.queryByRole('dialog')).not.toBeInTheDocument();
  });

  it('reads in feet and psi where those are chosen', async () => {
    await openDesk();
    act(() => usePreferences.getState().setUnits('imperial'));
    await ask('Why this no-stop time?');
    const working = await sheet();
    expect(working).toHaveTextContent('98.4252 ft');
    expect(working).toHaveTextContent(/psi\/ft/);
    expect(working).not.toHaveTextContent(/\d bar/);
  });

  it('asks each unit about its own figures', async () => {
    await openDesk();
    await ask('Why this no-stop time by Nitrox unit?');
    const working = await sheet();
    expect(working).toHaveTextContent('by “Nitrox unit”');
    // 32% oxygen leaves 68% nitrogen, where the dive itself is on air.
    expect(working).toHaveTextContent('fraction of nitrogen you breathe, 0.68');
  });

  it('asks a compartment of the chase why it holds what it holds', async () => {
    await openDesk();
    await userEvent.selectOptions(screen.getByRole('combobox', { name: 'Compartment' }), '5, 27 min');
    await ask('Why compartment 5 holds what it holds?');
    expect(await sheet()).toHaveAccessibleName('Why? Tension in compartment 5');
  });
});

describe('what if a number were another', () => {
  async function change(which: string | RegExp, to: string) {
    const working = await sheet();
    await typeset(working);
    const list = within(working).getByRole('combobox', { name: 'The number to change' });
    await userEvent.selectOptions(list, within(list).getByRole('option', { name: which }));
    const box = within(working).getByRole('textbox', { name: 'were' });
    await userEvent.clear(box);
    await userEvent.type(box, to);
    return working;
  }

  it('shows what would follow beside what is so, and leaves the dive alone', async () => {
    const store = await openDesk();
    const { scene } = store.getState();
    const shown = reading('No-stop time').textContent;
    await ask('Why this no-stop time?');
    const working = await change('half-time of this compartment for nitrogen', '8');
    const [answered, ...others] = within(working).getAllByRole('status');
    // What the reading says is heard as it comes.
    expect(answered).toHaveTextContent(`${noStopByHand(5).toFixed(2).replace(/0$/, '')} min (compartment 1)`);
    const told = others.at(-1)!;
    // The first compartment lasts longer then, and the second, of 8 min itself, is the first to reach its limit.
    const second = noStopByHand(8, 0.85, { a: 1, b: 0.6514 });
    expect(second).toBeLessThan(noStopByHand(8));
    expect(told).toHaveTextContent(
      `${second.toFixed(2)} min (compartment 2) instead of ${noStopByHand(5).toFixed(2).replace(/0$/, '')} min`,
    );
    expect(told).toHaveTextContent('The dive is as it was.');
    expect(store.getState().scene).toBe(scene);
    expect(reading('No-stop time').textContent).toBe(shown);
  });

  it('says of a number that is not for changing why it isn’t', async () => {
    await openDesk();
    await ask('Why this no-stop time?');
    const working = await sheet();
    await userEvent.click(within(working).getByText('Numbers that stand as they are, and why'));
    const why = within(working).getByText('It is the surface: no step says that depth.');
    expect(why.parentElement).toHaveTextContent('depth where this begins: leg 1, going down');
    expect(within(working).queryByRole('option', { name: /depth where this begins: leg 1,/ })).not.toBeInTheDocument();
  });

  it('marks only the steps that follow from it', async () => {
    await openDesk();
    await ask('Why this no-stop time?');
    const working = await change('gradient factor', '0.7');
    const marked = within(working)
      .getAllByRole('heading', { level: 4, name: /what if/ })
      .map((heading) => heading.textContent);
    expect(marked.map((title) => title.replace(/^\d+\. /, ''))).toEqual([
      'What this compartment tolerates at the surface what if',
      'No-stop time what if',
    ]);
    expect(within(working).getAllByRole('status').at(-1)!).toHaveTextContent(
      `${noStopByHand(5, 0.7).toFixed(2).replace(/0$/, '')} min`,
    );
  });

  it('goes back to what is so', async () => {
    await openDesk();
    await ask('Why this no-stop time?');
    const working = await change('gradient factor', '0.7');
    await userEvent.click(within(working).getByRole('button', { name: 'Reset' }));
    expect(within(working).queryByRole('heading', { level: 4, name: /what if/ })).not.toBeInTheDocument();
    expect(within(working).getByRole('textbox', { name: 'were' })).toHaveValue('0.85');
  });

  it('says what is wrong with a number that makes no sense, and how to mend it', async () => {
    await openDesk();
    await ask('Why this no-stop time?');
    const working = await change('gradient factor', '12');
    expect(within(working).getByRole('alert')).toHaveTextContent(
      '12 makes no sense here. Write a number from 0.01 to 1.',
    );
  });
});
