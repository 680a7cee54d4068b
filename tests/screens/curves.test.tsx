import { act, cleanup, fireEvent, render, screen, waitFor, within } from '@testing-library/react';
import userEvent from '@testing-library/user-event';
import { afterEach, beforeAll, beforeEach, describe, expect, it, vi } from 'vitest';
import { AscentRateSection } from '@/app/curves/AscentRateSection';
import { parseBefore, writeBefore } from '@/app/curves/before-text';
import { contourLevels, contourSurface, valueAt } from '@/app/curves/contour-levels';
import { NO_HISTORY } from '@/app/keep/history';
import { atlasFragment, readFragment } from '@/app/curves/atlas-address';
import { useAtlas } from '@/app/curves/atlas-store';
import { arrivalAt, wishConditions, type CurveWish } from '@/app/curves/curve-wish';
import { GradientFactorSection } from '@/app/curves/GradientFactorSection';
import { HalfTimesSection } from '@/app/curves/HalfTimesSection';
import { heavyWork, type HeavyJob } from '@/app/curves/heavy-work';
import { HowSureSection } from '@/app/curves/HowSureSection';
import { LimitsSection } from '@/app/curves/LimitsSection';
import { ModelsSection } from '@/app/curves/ModelsSection';
import { NoStopSection } from '@/app/curves/NoStopSection';
import CurvesPage from '@/app/curves/page';
import { useStatus } from '@/app/parts/status';
import { usePreferences } from '@/app/parts/preferences';
import zhl16 from '@/content/published/zhl16.json';
import navy from '@/content/published/no-stop-us-navy.json';
import { figuresOf } from '@/lib/ascent/figures';
import { ascentRateCurve } from '@/lib/curves/ascent-rate-curve';
import { bottomOf } from '@/lib/curves/bottom-phase';
import { curveSite, rested } from '@/lib/curves/curve-site';
import { gradientFactorGrid } from '@/lib/curves/gradient-factor-sweep';
import { noStopBand } from '@/lib/curves/how-sure';
import { noStopCurve } from '@/lib/curves/no-stop-curve';
import { USUAL_VARIATION } from '@/lib/curves/variation';
import { defaultSettings } from '@/lib/dive/default-settings';
import { computeTimeline } from '@/lib/dive/timeline';
import { AIR } from '@/lib/physics/gas';
import { LIMIT_MODELS } from '@/lib/tissue/models/all';

/** A worker that works in the page's thread: at once, or never where a test asks it to dawdle. */
class WorkerHere {
  static dawdles = false;
  static ended = 0;
  onmessage: ((event: { data: unknown }) => void) | undefined;
  postMessage(job: HeavyJob) {
    if (WorkerHere.dawdles) return;
    const work = heavyWork(job);
    for (;;) {
      const step = work.next();
      this.onmessage?.({ data: step.done ? { result: step.value } : { progress: step.value } });
      if (step.done) return;
    }
  }
  terminate() {
    WorkerHere.ended += 1;
  }
}

/** Loaded once, so that no test waits for it. */
beforeAll(() => import('@/app/curves/atlas-address'));

beforeEach(() => {
  WorkerHere.dawdles = false;
  WorkerHere.ended = 0;
  localStorage.clear();
  useAtlas.setState({ plate: 'no-stop', chosen: {}, history: NO_HISTORY });
  history.replaceState(null, '', '/curves/');
  vi.stubGlobal('Worker', WorkerHere);
});
afterEach(() => {
  // What is still to be asked of a worker goes before the worker.
  cleanup();
  vi.unstubAllGlobals();
  act(() => usePreferences.getState().setUnits('metric'));
});

const type = (label: string, text: string, at: HTMLElement = document.body) => {
  const box = within(at).getByLabelText(label);
  fireEvent.change(box, { target: { value: text } });
  fireEvent.blur(box);
};
const slide = (label: string, place: number) =>
  fireEvent.change(screen.getByRole('slider', { name: label }), { target: { value: String(place) } });
const openTable = (figure: string) => {
  const frame = screen.getByRole('figure', { name: figure });
  const details = frame.querySelector('details')!;
  details.open = true;
  fireEvent(details, new Event('toggle'));
  return within(frame).getByRole('table', { name: figure });
};
const cells = (table: HTMLElement, row: string | RegExp) =>
  Array.from(within(table).getByRole('row', { name: row }).querySelectorAll('td'), (cell) => cell.textContent);

const settings = defaultSettings();
const atSea = { site: curveSite(settings), tissues: rested(settings), gas: AIR, gf: 0.85 };
const wish: CurveWish = {
  gas: AIR,
  gradientFactors: { low: 0.85, high: 0.85 },
  altitudeM: 0,
  arrival: 'settled',
  before: undefined,
};
const whole = (minutes: number) => `${Math.floor(minutes)} min`;

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

describe('limits', () => {
  it('have the published coefficients in the table, all sixteen', () => {
    render(<LimitsSection />);
    const table = openTable('What each compartment tolerates');
    expect(within(table).getAllByRole('row')).toHaveLength(17);
    const five = zhl16.values.find(({ compartment }) => compartment === '5')!;
    expect(cells(table, /^5 /).slice(1, 3)).toEqual([five.nitrogen.aC.toFixed(4), five.nitrogen.b.toFixed(4)]);
  });

  it('say what a compartment chosen may hold at the depth of the cursor', async () => {
    render(<LimitsSection />);
    await userEvent.click(screen.getByRole('checkbox', { name: '1' }));
    slide('Depth to read', 0);
    const five = zhl16.values.find(({ compartment }) => compartment === '5')!;
    // Under 85 % at the surface: p + 0.85 · (a + p/b − p).
    const may = 1.01325 + 0.85 * (five.nitrogen.aC + 1.01325 / five.nitrogen.b - 1.01325);
    const figure = screen.getByRole('figure', { name: 'What each compartment tolerates' });
    expect(figure).toHaveAccessibleDescription(new RegExp(`compartment 5 may hold ${may.toFixed(2)} bar`));
    expect(figure).not.toHaveAccessibleDescription(/compartment 1 may/);
  });
});

describe('half-times', () => {
  it('close half of what is left in each, 98.4 % after six', () => {
    render(<HalfTimesSection />);
    const table = screen.getByRole('table', { name: /^After six half-times: compartment 5/ });
    expect(cells(table, /^1 /)).toEqual(['27 min', '50%', '50%']);
    expect(cells(table, /^6 /)).toEqual(['2 h 42 min', '98.4%', '1.6%']);
  });

  it('have sixteen answers at the cursor', () => {
    render(<HalfTimesSection />);
    type('Then at once at', '20 m');
    slide('Time to read', 9);
    // 9/80 of 240 min is 27 min, one half-time of compartment 5.
    const table = openTable('A step in pressure, sixteen answers');
    expect(within(table).getAllByRole('row')).toHaveLength(17);
    expect(cells(table, /^5 /)[1]).toBe('50%');
  });
});

describe('ascent rate', () => {
  it('reads surfacing supersaturation and stops at a rate as the engine works them out', () => {
    render(<AscentRateSection />);
    const own = { ...settings, gradientFactors: { low: 0.4, high: 0.85 } };
    const { site, end } = bottomOf({ settings: own, depthM: 36, minutes: 20, descentMMin: 18 });
    const [one] = ascentRateCurve(own, site, end, [9]);
    expect(screen.getByRole('figure', { name: /^Straight up/ })).toHaveAccessibleDescription(
      new RegExp(`${Math.round(one!.direct.surfacingSupersaturation * 100)}% after 20 min`),
    );
    expect(screen.getByRole('figure', { name: /^As the model asks/ })).toHaveAccessibleDescription(
      new RegExp(`${Math.ceil(one!.required.timeToSurfaceMin)} min up after 20 min, ${one!.required.stops} stops`),
    );
  });

  it('lays as many times at depth over each other as are asked for, and refuses more than can be told apart', () => {
    render(<AscentRateSection />);
    type('Times at depth', '15, 40 min');
    expect(screen.getByRole('figure', { name: /^Straight up/ })).toHaveAccessibleDescription(
      /after 15 min.*after 40 min/,
    );
    fireEvent.change(screen.getByLabelText('Times at depth'), { target: { value: '1, 2, 3, 4, 5, 6 min' } });
    expect(screen.getByLabelText('Times at depth')).toHaveAccessibleDescription(/at most 5/);
    fireEvent.change(screen.getByLabelText('Depth'), { target: { value: '0 m' } });
    expect(screen.getByLabelText('Depth')).toHaveAccessibleDescription(/surface is no depth/);
  });
});

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

describe('models side by side', () => {
  it('have Haldane’s and Workman’s no-stop times at 30 m, worked by hand', () => {
    render(<ModelsSection />);
    // Haldane, 5 min: 1.58·1.01325 is tolerated; −5·log2(1 − (1.58 − 0.79)·1.01325/(0.79·3)) = 2.97 min.
    const byHand = -5 * Math.log2(1 - ((1.58 - 0.79) * 1.01325) / (0.79 * 3));
    const row = cells(openTable('No-stop times by each model'), /^30 m/);
    // To a tenth and never longer than it is.
    expect(row[0]).toBe(`${(Math.floor(byHand * 10) / 10).toFixed(1)} min`);
    expect(row[1]).toBe('22.7 min');
    expect(row).toHaveLength(LIMIT_MODELS.length);
  });

  it('are taken off and laid on again', async () => {
    render(<ModelsSection />);
    await userEvent.click(screen.getByRole('checkbox', { name: 'Haldane 1908' }));
    expect(screen.getByRole('figure', { name: 'No-stop times by each model' })).not.toHaveAccessibleDescription(
      /Haldane/,
    );
    expect(screen.getByRole('figure', { name: 'Ceilings over the same dive' })).toHaveAccessibleDescription(
      /Workman 1965/,
    );
  });
});

describe('how sure it is', () => {
  it('is told as a band, never a figure alone', async () => {
    render(<HowSureSection />);
    const figure = await screen.findByRole('figure', { name: 'No-stop time, as a band' });
    const band = noStopBand(atSea, [30], USUAL_VARIATION);
    expect(figure).toHaveAccessibleDescription(
      new RegExp(
        `model says ${whole(band.middle[0]!)}, and anything from ${whole(band.low[0]!)} to ${whole(band.high[0]!)}`,
      ),
    );
    expect(screen.getByRole('figure', { name: 'Ceiling of a dive, as a band' })).toHaveAccessibleDescription(
      /anything from [\d.]+ m to [\d.]+ m/,
    );
    expect(screen.getByText(/It is not a margin of safety/)).toBeInTheDocument();
  });

  it('refuses more than ten per cent', () => {
    render(<HowSureSection />);
    fireEvent.change(screen.getByLabelText('Half-times off by'), { target: { value: '20%' } });
    expect(screen.getByLabelText('Half-times off by')).toHaveAccessibleDescription(/0% to 10%/);
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
