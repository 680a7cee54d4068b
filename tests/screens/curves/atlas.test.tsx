import { act, render, screen, waitFor, within } from '@testing-library/react';
import userEvent from '@testing-library/user-event';
import { describe, expect, it } from 'vitest';
import { contourLevels, contourSurface, valueAt } from '@/app/curves/plot/contour-levels';
import { NO_HISTORY } from '@/app/keep/history';
import { atlasFragment, readFragment } from '@/app/curves/chosen/atlas-address';
import { useAtlas } from '@/app/curves/chosen/atlas-store';
import { GradientFactorSection } from '@/app/curves/plates/GradientFactorSection';
import { LimitsSection } from '@/app/curves/plates/LimitsSection';
import CurvesPage from '@/app/curves/page';
import { gradientFactorGrid } from '@/lib/curves/gradient-factor-sweep';
import { WorkerHere, type, slide, settings, atTheAtlas } from './at-the-plates';

atTheAtlas();

describe('gradient factors', () => {
  const factors = Array.from({ length: 19 }, (_, i) => (10 + 5 * i) / 100);
  const bottom = { settings, depthM: 40, minutes: 25, descentMMin: 18 };

  it('reads the map at the cursor as the engine works it out', async () => {
    render(<GradientFactorSection />);
    const figure = await screen.findByRole('figure', { name: /^Time to surface for each pair/ });
    const grid = gradientFactorGrid({ bottom, figure: 'timeToSurface', lows: factors, highs: factors });
    expect(figure).toHaveAccessibleDescription(new RegExp(`At 40/85 it is ${Math.ceil(valueAt(grid, 0.4, 0.85))} min`));
    slide('High factor to read', (70 - 10) / 5);
    expect(figure).toHaveAccessibleDescription(new RegExp(`At 40/70 it is ${Math.ceil(valueAt(grid, 0.4, 0.7))} min`));
    expect(screen.getByRole('status')).toHaveTextContent('Worked out: the map.');
  });

  it('can be stopped and begun again', async () => {
    WorkerHere.dawdles = true;
    render(<GradientFactorSection />);
    expect(screen.getByRole('status')).toHaveTextContent('Working out the map: 0%');
    await act(() => new Promise((resolve) => setTimeout(resolve, 400)));
    await userEvent.click(screen.getByRole('button', { name: 'Stop working out the map' }));
    expect(screen.getByRole('status')).toHaveTextContent('Stopped. Nothing of the map is shown yet.');
    expect(WorkerHere.ended).toBe(1);
    WorkerHere.dawdles = false;
    await userEvent.click(screen.getByRole('button', { name: 'Work out the map again' }));
    expect(await screen.findByRole('figure', { name: /^Time to surface/ })).toBeInTheDocument();
  });

  it('stopped before it has begun is not begun', async () => {
    render(<GradientFactorSection />);
    await userEvent.click(screen.getByRole('button', { name: 'Stop working out the map' }));
    await act(() => new Promise((resolve) => setTimeout(resolve, 500)));
    expect(screen.getByRole('status')).toHaveTextContent('Stopped.');
    expect(screen.queryByRole('figure')).not.toBeInTheDocument();
  });

  it('draws contours over no hole, at round minutes that some pair passes', () => {
    const grid = gradientFactorGrid({ bottom, figure: 'timeToSurface', lows: factors, highs: factors });
    expect(grid.values.some(Number.isNaN)).toBe(true);
    expect(contourSurface(grid).every(Number.isFinite)).toBe(true);
    const finite = grid.values.filter(Number.isFinite);
    for (const level of contourLevels(grid)) {
      expect(finite.some((value) => value < level) && finite.some((value) => value >= level)).toBe(true);
    }
    expect(contourLevels(grid).length).toBeGreaterThan(4);
  });
});

describe('the atlas', () => {
  const open = async (title: string) => {
    await userEvent.click(
      within(screen.getByRole('navigation', { name: 'Plates' })).getByRole('link', { name: title }),
    );
    return screen.findByRole('heading', { level: 2, name: title });
  };

  /** The page with what keeps it there, which is fetched a little later. */
  const atlas = async () => {
    const drawn = render(<CurvesPage />);
    await act(() => new Promise((resolve) => setTimeout(resolve, 50)));
    return drawn;
  };
  const isOf36 = () =>
    waitFor(() => expect(screen.getByRole('list', { name: 'No-stop times at 30 m' })).toHaveTextContent('36%'));

  it('has seven plates, of which one is open, and says which', async () => {
    await atlas();
    const links = within(screen.getByRole('navigation', { name: 'Plates' })).getAllByRole('link');
    expect(links).toHaveLength(7);
    for (const link of links) {
      await open(link.textContent);
      expect(link).toHaveAttribute('aria-current', 'true');
      expect(screen.getAllByRole('heading', { level: 2 })).toHaveLength(1);
    }
  });

  it('undoes a choice, a row of them in one box at once, and does it again', async () => {
    await atlas();
    slide('Depth to read', 20);
    slide('Depth to read', 24);
    expect(screen.getByRole('list', { name: 'No-stop times at 30 m' })).toBeInTheDocument();
    slide('Depth to read', 12);
    await userEvent.click(screen.getByRole('radio', { name: 'leaving the surface' }));
    await userEvent.click(screen.getByRole('button', { name: 'Undo' }));
    expect(screen.getByRole('radio', { name: 'arriving at depth' })).toBeChecked();
    expect(screen.getByRole('list', { name: 'No-stop times at 18 m' })).toBeInTheDocument();
    await userEvent.click(screen.getByRole('button', { name: 'Undo' }));
    expect(screen.getByRole('list', { name: 'No-stop times at 30 m' })).toBeInTheDocument();
    await userEvent.click(screen.getByRole('button', { name: 'Redo' }));
    expect(screen.getByRole('list', { name: 'No-stop times at 18 m' })).toBeInTheDocument();
  });

  it('keeps what is chosen in the address and on this machine, and opens with it', async () => {
    const first = await atlas();
    type('Gas', '36%', screen.getByRole('group', { name: 'Curve 2' }));
    await waitFor(() => expect(location.hash).toContain('#no-stop?wishes='));
    const link = location.hash;
    first.unmount();
    useAtlas.setState({ plate: 'no-stop', chosen: {}, history: NO_HISTORY });
    history.replaceState(null, '', '/curves/');
    const kept = await atlas();
    await isOf36();
    kept.unmount();
    localStorage.clear();
    useAtlas.setState({ plate: 'no-stop', chosen: {}, history: NO_HISTORY });
    history.replaceState(null, '', `/curves/${link}`);
    await atlas();
    await isOf36();
  });

  it('passes over what makes no sense in a link, and keeps what does', () => {
    const read = readFragment('#limits?anchor=12&at=deep&helium=2&factors=90/30');
    expect(read?.plate).toBe('limits');
    useAtlas.getState().show({ plate: 'limits', chosen: { limits: read!.choices! } });
    render(<LimitsSection />);
    expect(screen.getByLabelText('Anchor of the line')).toHaveValue('12 m');
    expect(screen.getByLabelText('Gradient factors')).toHaveValue('40/85');
    expect(screen.getByRole('slider', { name: 'Depth to read' })).toHaveAttribute('aria-valuetext', '9 m');
    expect(readFragment('#lunch?at=3')).toBeUndefined();
    expect(atlasFragment({ plate: 'models', chosen: {} })).toBe('#models');
  });
});
