import { act, screen, within } from '@testing-library/react';
import userEvent from '@testing-library/user-event';
import type { ReactNode } from 'react';
import { afterEach, describe, expect, it, vi } from 'vitest';
import { PictureRoom } from '@/app/stage/PictureRoom';
import { StagedFigure } from '@/app/stage/gas/StagedFigure';
import { cautions } from '@/content/cautions';
import { scenarios } from '@/content/scenarios/scenarios';
import { variantsOf, type Variant } from '@/lib/exposure/variants';
import { diveOf } from '../unit/read';
import { onDesk, openDisclosure } from './on-desk';

afterEach(() => vi.unstubAllGlobals());

const desk = (part: ReactNode, ...lines: string[]) => onDesk(part, lines.join('\n'));
const staged = scenarios.find(({ id }) => id === 'staged')!.script;

describe('staged stops on the desk', () => {
  it('stand over what slips make of them, the longest first, each as a bar whose path is drawn once it is asked for', async () => {
    desk(<StagedFigure />, staged);
    const bars = () => within(screen.getByRole('list', { name: 'How long the way up takes' })).getAllByRole('button');
    const dive = diveOf(staged);
    const [planned, ...others] = variantsOf(dive);
    const whole = ({ plan }: Variant) => Math.ceil(plan.schedule.timeToSurfaceMin - 1e-9);
    expect(bars().map(({ textContent }) => textContent)).toEqual([
      `as planned${whole(planned!)} min`,
      ...others.map((one) => `${one.title}+${whole(one) - whole(planned!)} min`),
    ]);
    expect(others.map(({ title }) => title)).toContain('50% lost');
    const drawn = (bar: HTMLElement) =>
      [...bar.querySelectorAll('rect')].map((rect) => Number(rect.getAttribute('width')));
    const [longest, ofPlan] = drawn(bars()[1]!);
    expect(longest).toBe(100);
    expect(ofPlan).toBeCloseTo(
      (100 * planned!.plan.schedule.timeToSurfaceMin) / others[0]!.plan.schedule.timeToSurfaceMin,
      6,
    );
    const paths = () => document.querySelectorAll('path[class*="ascent"]').length;
    expect(paths()).toBe(1);
    await userEvent.click(bars().find(({ textContent }) => textContent!.startsWith('50% lost'))!);
    expect(paths()).toBe(2);
    const table = within(screen.getByRole('table', { name: 'As planned, and 50% lost' }));
    expect(table.getAllByRole('columnheader').map(({ textContent }) => textContent)).toEqual([
      'Stop at',
      'as planned',
      '50% lost',
    ]);
    // A slip nobody looks at goes, and its path with it.
    await userEvent.click(screen.getByRole('checkbox', { name: '50% lost' }));
    expect(bars().map(({ textContent }) => textContent!.replace(/[+\d].*/, ''))).not.toContain('50% lost');
    expect(bars()).toHaveLength(others.length);
    expect(paths()).toBe(1);
  });

  it('write the last stop into the script, and then have none shallower', async () => {
    const { store } = desk(<StagedFigure />, staged);
    await userEvent.click(screen.getByRole('radio', { name: '6 m' }));
    expect(store.getState().script).toContain('last stop: 6 m');
    const rows = within(screen.getByRole('table', { name: 'As planned' }))
      .getAllByRole('rowheader')
      .map((one) => one.textContent);
    expect(rows).toContain('6 m');
    expect(rows).not.toContain('3 m');
  });

  it('go into the script as a way up that never passes its ceiling', async () => {
    const { store } = desk(<StagedFigure />, staged);
    await userEvent.click(screen.getByRole('button', { name: 'Put this way up into the script' }));
    const { errors, scene, script } = store.getState();
    expect(errors).toEqual([]);
    expect(script).toContain('# Staged stops on three gases');
    const { timeline, figures } = scene;
    for (let i = 0; i < timeline.length; i += 1) expect(figures.ceilingM[i]! - timeline.depthM[i]!).toBeLessThan(1e-6);
  });

  it('print as a run-time table with the cautions and the watermark, and nothing else', async () => {
    const print = vi.fn();
    vi.stubGlobal('print', print);
    desk(<StagedFigure />, staged);
    await userEvent.click(screen.getByRole('button', { name: 'Print the run-time table' }));
    expect(print).toHaveBeenCalledOnce();
    const sheet = screen.getByRole('table', { name: 'Run-time table' }).closest('body > *')!;
    expect(sheet).toHaveTextContent(cautions.deepCourse);
    expect(sheet).toHaveTextContent(cautions.general);
    expect(sheet.querySelector('[data-watermark]')).toHaveTextContent(cautions.watermark);
    expect(within(sheet as HTMLElement).getAllByText(/^switch to/)).toHaveLength(2);
    act(() => void window.dispatchEvent(new Event('afterprint')));
    expect(screen.queryByRole('table', { name: 'Run-time table' })).toBeNull();
  });

  it('are spread deeper and shallower in the same time, once that is opened', async () => {
    desk(<StagedFigure />, staged);
    openDisclosure('Deeper or shallower stops, in the same time');
    const table = within(await screen.findByRole('table', { name: 'Stops timed to the second' }));
    const whole = table
      .getAllByRole('row')
      .find((one) => within(one).queryByRole('rowheader', { name: 'Whole way up' }))!;
    const seconds = within(whole)
      .getAllByRole('cell')
      .map((cell) => {
        const [minutes, rest] = cell.textContent!.split(':').map(Number);
        return minutes! * 60 + rest!;
      });
    expect(seconds.length).toBeGreaterThan(2);
    expect(Math.max(...seconds) - Math.min(...seconds)).toBeLessThanOrEqual(6);
  });
});

describe('pictures of gas beside each other', () => {
  it('look at one compartment, chosen in any of them, and say the warning of deep dives once', async () => {
    desk(<PictureRoom shown={['chase', 'pressure', 'helium', 'oxygen', 'supply']} />, staged);
    const helium = await screen.findByRole('figure', { name: 'Helium and nitrogen' });
    await userEvent.selectOptions(
      within(helium).getByRole('combobox', { name: 'Compartment' }),
      within(helium).getByRole('option', { name: /^9, 109 min/ }),
    );
    expect(helium).toHaveAccessibleDescription(/compartment 9 holds/);
    expect(await screen.findByRole('figure', { name: 'Pressure against pressure' })).toHaveAccessibleDescription(
      /Compartment 9 holds/,
    );
    expect(await screen.findByRole('button', { name: 'Why compartment 9 holds what it holds?' })).toBeInTheDocument();
    expect((await screen.findAllByRole('note')).map(({ textContent }) => textContent)).toEqual([cautions.deepCourse]);
    // Each has it for the file it may be saved as.
    expect(screen.getAllByText(cautions.deepCourse)).toHaveLength(3);
  });
});
