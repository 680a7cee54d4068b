import { act, screen, within } from '@testing-library/react';
import userEvent from '@testing-library/user-event';
import { afterEach, describe, expect, it } from 'vitest';
import type { PictureId } from '@/app/pictures/picture-ids';
import { pictures } from '@/app/stage/figures/all';
import { usePreferences } from '@/app/parts/preferences';
import published from '@/content/published/zhl16.json';
import { openWall, goTo } from './open-wall';

async function tableOf(title: string) {
  const figure = screen.getByRole('figure', { name: title });
  // What stands in a menu is fetched with the first of them.
  await userEvent.click(await within(figure).findByText(/^Table of /));
  return within(figure).findByRole('table', { name: title });
}

/** The cells of the row that begins with a name, as printed. */
function cells(table: HTMLElement, name: string): string[] {
  const row = within(table)
    .getAllByRole('row')
    .find((one) => within(one).queryByRole('rowheader')?.textContent.trim() === name);
  if (!row) throw new Error(`no row is called ${name}`);
  return within(row)
    .getAllByRole('cell')
    .map((cell) => cell.textContent.replaceAll('\u00a0', ' '));
}

/** Air at sea level, 0.1 bar to the metre: the numbers a person would put into the formulas by hand. */
const SURFACE = 1.01325;
const inLungs = (ambient: number) => (ambient - 0.0627) * 0.79;

/**
 * Nitrogen in a compartment after a minute down to 30 m and `minutes` there: Schreiner's equation (Schreiner & Kelley
 * 1971), then Haldane's (Boycott, Damant & Haldane 1908), worked out here and not by the engine.
 */
function tensionAt30(halfTimeMin: number, minutes: number): number {
  const k = Math.LN2 / halfTimeMin;
  const rate = 3 * 0.79;
  const start = inLungs(SURFACE);
  const down = start + rate * (1 - 1 / k) - (start - start - rate / k) * Math.exp(-k);
  const breathed = inLungs(SURFACE + 3);
  return breathed + (down - breathed) * Math.exp(-k * minutes);
}

/** Nitrogen a and b of a compartment, by its published name, and what it tolerates: a + p/b. */
function published16(name: string) {
  const { nitrogen } = published.values.find((row) => row.compartment === name)!;
  return { halfTimeMin: nitrogen.halfTimeMin, limit: (ambient: number) => nitrogen.aC + ambient / nitrogen.b };
}

afterEach(() => act(() => usePreferences.setState({ units: 'metric' })));

/** The pictures of gas in the body; other panels have tests of their own. */
const DRAWN = ['chase', 'pressure', 'loading', 'supersaturation', 'no-stop'] as const satisfies readonly PictureId[];

describe('every picture of gas in the body', () => {
  it.each(DRAWN)('%s has a title, says in words what it shows at the cursor, and has a table behind it', async (id) => {
    await openWall([id]);
    const { title } = pictures[id];
    const figure = screen.getByRole('figure', { name: title });
    expect(figure).toHaveAccessibleDescription(/\d.*\.$/);
    expect(figure.querySelector(`[data-picture="${id}"] svg`)).toBeInTheDocument();
    expect(within(figure).queryByRole('table')).not.toBeInTheDocument();
    expect(within(await tableOf(title)).getAllByRole('row').length).toBeGreaterThan(1);
  });

  it.each(DRAWN)('%s leaves its drawing to the words and the table', async (id) => {
    await openWall([id]);
    for (const drawing of document.querySelectorAll('[data-picture] :is(svg, canvas)'))
      expect(drawing).toHaveAttribute('aria-hidden', 'true');
  });

  it.each(DRAWN)('%s says something else when the cursor has moved', async (id) => {
    const store = await openWall([id]);
    const figure = screen.getByRole('figure', { name: pictures[id].title });
    await goTo(store, 300);
    const before = document.getElementById(figure.getAttribute('aria-describedby')!)!.textContent;
    await goTo(store, 1620);
    expect(document.getElementById(figure.getAttribute('aria-describedby')!)!.textContent).not.toBe(before);
  });
});

describe('the chase', () => {
  it.each([
    ['1', '1b'],
    ['5', '5'],
    ['16', '16'],
  ])('tells in its table what compartment %s holds and tolerates, as worked out by hand', async (number, name) => {
    const store = await openWall(['chase']);
    await goTo(store, 21 * 60);
    const { halfTimeMin, limit } = published16(name);
    const ambient = SURFACE + 3;
    const [halfTime, tension, here, surface, share] = cells(await tableOf('The chase'), number);
    expect(Number(halfTime)).toBe(halfTimeMin);
    expect(Number(tension)).toBeCloseTo(tensionAt30(halfTimeMin, 20), 3);
    expect(Number(here)).toBeCloseTo(ambient + 0.85 * (limit(ambient) - ambient), 3);
    const surfaceLimit = SURFACE + 0.85 * (limit(SURFACE) - SURFACE);
    expect(Number(surface)).toBeCloseTo(surfaceLimit, 3);
    const percent = (tensionAt30(halfTimeMin, 20) / surfaceLimit) * 100;
    expect(share).toBe(`${percent > 100 ? Math.ceil(percent) : Math.floor(percent)}%`);
  });

  it('counts the lozenges as the table has them', async () => {
    const store = await openWall(['chase']);
    await goTo(store, 25 * 60);
    const table = await tableOf('The chase');
    const past = Array.from({ length: 16 }, (_, c) => cells(table, String(c + 1)).map(Number)).filter(
      ([, tension, , surface]) => tension! > surface!,
    );
    expect(past.length).toBeGreaterThan(1);
    expect(screen.getByRole('figure', { name: 'The chase' })).toHaveAccessibleDescription(
      new RegExp(`${past.length} of 16, the lozenges, are past the limit`),
    );
    const states = Array.from({ length: 16 }, (_, c) => cells(table, String(c + 1)).at(-1)!);
    expect(states.filter((state) => state.includes('past'))).toHaveLength(past.length);
    const leader = /compartment (\d+) leads/.exec(
      document.getElementById(screen.getByRole('figure').getAttribute('aria-describedby')!)!.textContent,
    )![1]!;
    expect(states.flatMap((state, c) => (state.includes('leads') ? [String(c + 1)] : []))).toEqual([leader]);
    expect(within(table).getByRole('columnheader', { name: 'Compartment (25:00)' })).toBeInTheDocument();
  });

  it('shows how much of each tension is helium, once there is helium', async () => {
    const store = await openWall(
      ['chase'],
      'gas: 18/45\ndescend to 50 m at 20 m/min\nstay 10 min\nascend to surface at 9 m/min\n',
    );
    expect(within(screen.getByRole('figure')).getByText('filled: nitrogen, open: helium')).toBeInTheDocument();
    await goTo(store, 600);
    const [, tension, helium] = cells(await tableOf('The chase'), '1').map(Number);
    expect(helium).toBeGreaterThan(1);
    expect(helium).toBeLessThan(tension!);
  });

  it('gives pressures in psi to a reader of feet', async () => {
    usePreferences.setState({ units: 'imperial' });
    await openWall(['chase']);
    const table = await tableOf('The chase');
    expect(within(table).getByRole('columnheader', { name: 'Tension, psi' })).toBeInTheDocument();
    // Nitrogen of air at the surface: 0.7509 bar, and 1 psi is 0.06894757 bar (NIST SP 811).
    expect(Number(cells(table, '9')[1])).toBeCloseTo(inLungs(SURFACE) / 0.06894757, 1);
  });
});

describe('the loading map', () => {
  it('has sixteen supersaturations to a time, as worked out by hand', async () => {
    await openWall(['loading']);
    const row = cells(await tableOf('The loading map'), '21:00');
    expect(row).toHaveLength(16);
    for (const [index, name] of [
      [0, '1b'],
      [4, '5'],
      [15, '16'],
    ] as const) {
      const { halfTimeMin, limit } = published16(name);
      const share = (tensionAt30(halfTimeMin, 20) - SURFACE) / (limit(SURFACE) - SURFACE);
      expect(row[index]).toBe(`${Math.round(share * 100)}%${share > 0.85 ? ', past' : ''}`.replace('-', '−'));
    }
  });

  it('can be looked at for the depth the diver is at, where the same gas is no excess', async () => {
    await openWall(['loading']);
    const table = await tableOf('The loading map');
    expect(cells(table, '21:00')[0]).toMatch(/past$/);
    await userEvent.click(screen.getByRole('radio', { name: 'At your depth' }));
    expect(cells(table, '21:00')[0]).toMatch(/^−/);
  });

  it('calls a compartment past its limit exactly while the no-stop picture asks for a stop', async () => {
    await openWall(['loading', 'no-stop']);
    const map = await tableOf('The loading map');
    const noStop = await tableOf('No-stop time');
    const rows = within(noStop)
      .getAllByRole('rowheader')
      .map((header) => header.textContent);
    expect(rows.length).toBeGreaterThan(20);
    for (const time of rows) {
      const past = cells(map, time).some((cell) => cell.endsWith('past'));
      expect(`${time} ${past}`).toBe(`${time} ${cells(noStop, time)[1] === '0, ceiling'}`);
    }
  });
});

describe('pressure against pressure', () => {
  it('follows the compartment that leads, until one is chosen', async () => {
    const store = await openWall(['pressure']);
    const table = await tableOf('Pressure against pressure');
    const rows = () =>
      within(table)
        .getAllByRole('rowheader')
        .map((header) => header.textContent);
    await goTo(store, 8 * 60);
    expect(rows()).toEqual(['1']);
    await goTo(store, 45 * 60);
    const later = rows();
    expect(later).not.toEqual(['1']);
    await userEvent.selectOptions(screen.getByRole('combobox', { name: 'Compartment' }), '9, 109 min');
    expect(rows()).toEqual(['9']);
    await userEvent.selectOptions(screen.getByRole('combobox', { name: 'Compartment' }), 'All sixteen');
    expect(rows()).toHaveLength(16);
  });

  it('says what surrounds the diver and what the compartment holds and tolerates', async () => {
    const store = await openWall(['pressure']);
    await goTo(store, 21 * 60);
    await userEvent.selectOptions(screen.getByRole('combobox', { name: 'Compartment' }), '5, 27 min');
    const { limit } = published16('5');
    const ambient = SURFACE + 3;
    const held = tensionAt30(27, 20).toFixed(2);
    const tolerated = (ambient + 0.85 * (limit(ambient) - ambient)).toFixed(2);
    expect(screen.getByRole('figure')).toHaveAccessibleDescription(
      `At 21:00 the pressure around you is ${ambient.toFixed(2)} bar. Compartment 5 holds ${held} bar of gas and tolerates ${tolerated} bar here.`,
    );
  });
});

describe('supersaturation over time', () => {
  it('is the same here and on surfacing once the diver is at the surface', async () => {
    await openWall(['supersaturation']);
    const table = await tableOf('Supersaturation');
    const last = within(table).getAllByRole('rowheader').at(-1)!.textContent;
    const [here, hereBy, surfaced, surfacedBy] = cells(table, last);
    expect([here, hereBy]).toEqual([surfaced, surfacedBy]);
    expect(here).not.toBe('0%');
    const [below, , up] = cells(table, '21:00');
    expect(below).toMatch(/^−/);
    expect(up).toMatch(/^1\d\d%$/);
  });
});

describe('no-stop time over time', () => {
  it('counts a minute a minute at one depth, to nothing', async () => {
    await openWall(['no-stop']);
    const table = await tableOf('No-stop time');
    const [, at3, by] = cells(table, '3:00');
    const [, at8] = cells(table, '8:00');
    expect(Number(at3) - Number(at8)).toBe(5);
    expect(by).toBe('1');
    expect(cells(table, '21:00')[1]).toBe('0, ceiling');
    expect(cells(table, '0:00')[1]).toBe('>99');
  });
});
