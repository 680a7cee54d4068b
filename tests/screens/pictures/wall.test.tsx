import { act, fireEvent, render, screen, within } from '@testing-library/react';
import userEvent from '@testing-library/user-event';
import { afterEach, describe, expect, it, vi } from 'vitest';
import { DeskContext } from '@/app/stage/desk-context';
import { createDeskStore } from '@/app/stage/desk-store';
import { PictureRoom } from '@/app/stage/PictureRoom';
import { PICTURE_IDS, type PictureId } from '@/app/pictures/picture-ids';
import { pictures } from '@/app/stage/figures/all';
import { usePreferences } from '@/app/parts/preferences';
import { cautions } from '@/content/cautions';
import { plannedAt } from '@/lib/ascent/plan/ascent-start';
import { sampleFromS } from '@/lib/dive/timeline';
import { SCRIPT, openWall, goTo } from './open-wall';

afterEach(() => act(() => usePreferences.setState({ units: 'metric' })));

describe('a pointer on a picture', () => {
  const point = (id: PictureId, clientX: number, clientY: number) => {
    const drawing = document.querySelector(`[data-picture="${id}"] svg`)!;
    fireEvent.pointerMove(drawing, { clientX, clientY });
    return document.querySelector(`[data-picture="${id}"]`)!;
  };

  it('names the compartment, its half-time, what it holds and its limits in the chase', async () => {
    const store = await openWall(['chase']);
    await goTo(store, 21 * 60);
    expect(point('chase', 60, 100)).toHaveTextContent(
      /Compartment 1, half-time 5 minholds 2\.\d\d barlimit here \d\.\d\d barlimit at the surface 2\.\d\d bar/,
    );
  });

  it('names the compartment, the value and the time in the loading map', async () => {
    await openWall(['loading']);
    expect(point('loading', 400, 60)).toHaveTextContent(/Compartment 3, half-time 12\.5 min\d+%.*at \d+:\d\d/);
  });

  it('names the time, the values and the compartments over time', async () => {
    await openWall(['supersaturation', 'no-stop']);
    expect(point('supersaturation', 400, 100)).toHaveTextContent(
      /\d+:\d\dat your depth −\d+%if you surfaced \d+%, compartment \d/,
    );
    expect(point('no-stop', 130, 100)).toHaveTextContent(/\d:\d\d\d+ min without a stopcompartment 1 sets it/);
  });

  it('names the chosen compartment where pressure is drawn against pressure', async () => {
    await openWall(['pressure']);
    expect(point('pressure', 300, 100)).toHaveTextContent(/Compartment \d+, half-time \d+ minholds 0\.75 bar/);
  });

  it('moves the one time cursor when pressed, and stops naming when it leaves', async () => {
    const store = await openWall(['loading']);
    const drawing = document.querySelector('[data-picture="loading"] svg')!;
    fireEvent.pointerDown(drawing, { clientX: 400, clientY: 60, buttons: 1, pointerId: 1 });
    expect(store.getState().cursorS).toBeGreaterThan(600);
    expect(screen.getByText(/Compartment 3/)).toBeInTheDocument();
    fireEvent.pointerLeave(drawing);
    fireEvent.pointerOut(drawing);
    expect(screen.queryByText(/Compartment 3/)).not.toBeInTheDocument();
  });
});

it('the dive names what is left of a stop under way as every reading does: in minutes or tenths, never rounded down', async () => {
  const store = await openWall(['profile'], SCRIPT.replace('stay 25', 'stay 40'));
  const drawn = () => document.querySelector('[data-picture="profile"] svg')!.textContent;
  for (const timeS of [2625, 2633, 2641]) {
    await goTo(store, timeS);
    const [, minutes] = /([\d.]+) min at 6 m/.exec(drawn())!;
    expect(minutes).toMatch(/^\d+(\.\d)?$/);
    const { timeline, figures } = store.getState().scene;
    const left = plannedAt(timeline, figures, sampleFromS(timeline, timeS)).stops.find(
      ({ depthM }) => depthM === 6,
    )!.minutes;
    expect(Number(minutes)).toBeGreaterThanOrEqual(left);
    expect(Number(minutes)).toBeLessThan(left + 0.1);
  }
});

describe('the choice of pictures', () => {
  async function openChooser(shown: readonly PictureId[]) {
    const store = await openWall(shown);
    await userEvent.click(screen.getByText('Choose pictures'));
    const list = screen.getByRole('list', { name: 'Pictures' });
    const names = () =>
      within(list)
        .getAllByRole('checkbox')
        .map((box) => box.closest('label')!.textContent);
    return { store, list, names };
  }

  it('lists every picture there is, those on show first and in their order', async () => {
    const { names } = await openChooser(['chase', 'profile']);
    expect(names()).toEqual(['The chase', 'The dive', ...PICTURE_IDS.slice(2).map((id) => pictures[id].title)]);
    expect(screen.getByRole('checkbox', { name: 'The chase' })).toBeChecked();
    expect(screen.getByRole('checkbox', { name: 'No-stop time' })).not.toBeChecked();
  });

  it('shows and hides a picture, each as one step to undo', async () => {
    const { store } = await openChooser(['profile', 'chase']);
    await userEvent.click(screen.getByRole('checkbox', { name: 'The loading map' }));
    await userEvent.click(screen.getByRole('checkbox', { name: 'The dive' }));
    expect(store.getState().pictures).toEqual(['chase', 'loading']);
    expect(screen.getByText('The dive is hidden.')).toBeInTheDocument();
    act(() => store.getState().undo());
    expect(store.getState().pictures).toEqual(['profile', 'chase', 'loading']);
    act(() => store.getState().undo());
    expect(store.getState().pictures).toEqual(['profile', 'chase']);
    expect(screen.getByRole('checkbox', { name: 'The loading map' })).not.toBeChecked();
  });

  it('moves a picture with the keyboard, keeps the focus on it and says where it is', async () => {
    const { store } = await openChooser(['profile', 'chase', 'no-stop']);
    const up = screen.getByRole('button', { name: 'Move No-stop time up' });
    up.focus();
    await userEvent.keyboard('{Enter}');
    expect(store.getState().pictures).toEqual(['profile', 'no-stop', 'chase']);
    expect(screen.getByText('No-stop time is now 2 of 3.')).toBeInTheDocument();
    await userEvent.keyboard('{Enter}');
    expect(store.getState().pictures).toEqual(['no-stop', 'profile', 'chase']);
    expect(up).toHaveFocus();
    expect(up).toHaveAttribute('aria-disabled', 'true');
    await userEvent.keyboard('{Enter}');
    expect(store.getState().pictures).toEqual(['no-stop', 'profile', 'chase']);
    act(() => store.getState().undo());
    expect(store.getState().pictures).toEqual(['profile', 'no-stop', 'chase']);
  });

  it('says how to bring pictures back when none is shown', async () => {
    await openChooser(['chase']);
    await userEvent.click(screen.getByRole('checkbox', { name: 'The chase' }));
    expect(screen.getByText(/No picture is shown/)).toBeInTheDocument();
  });
});

it('the second dive’s sixteen compartments stand in the chase, as squares, where its own tensions are', async () => {
  const store = await openWall(['chase']);
  // Early on, when none is past its limit and drawn as a lozenge.
  await goTo(store, 300);
  const squares = () => document.querySelector('[data-dive="second"]')?.getAttribute('d')?.match(/M/g);
  expect(squares()).toBeUndefined();
  act(() => store.getState().change({ overlay: { title: 'As it was', script: SCRIPT } }));
  expect(squares()).toHaveLength(16);
  expect(screen.getByText('squares: As it was')).toBeInTheDocument();
  // The same dive: each square has the first dive's mark in its middle.
  const [, fromX, fromY, side] = /^M([\d.]+),([\d.]+)h([\d.]+)/.exec(
    document.querySelector('[data-dive="second"]')!.getAttribute('d')!,
  )!;
  const [, left, middle, radius] = /M([\d.-]+),([\d.-]+)a([\d.]+)/.exec(
    [...document.querySelectorAll('[data-picture="chase"] path')]
      .map((path) => path.getAttribute('d'))
      .find((d) => /a8,8/.test(d ?? ''))!,
  )!;
  expect(Number(fromX) + Number(side) / 2).toBeCloseTo(Number(left) + Number(radius), 0);
  act(() => store.getState().change({ overlay: { title: 'Shallow', script: SCRIPT.replaceAll('30 m', '9 m') } }));
  const shallowY = /^M[\d.]+,([\d.]+)/.exec(document.querySelector('[data-dive="second"]')!.getAttribute('d')!)![1];
  // Pressure upward: less gas stands lower.
  expect(Number(shallowY)).toBeGreaterThan(Number(fromY));
  expect(Number(middle)).toBeGreaterThan(0);
});

describe('the room of the pictures', () => {
  it('keeps a sheet that is being printed, with its cautions, when pictures find another place', async () => {
    // On a busy machine their code takes longer than an answer is waited for.
    await Promise.all([import('@/app/stage/after-opening'), import('@/app/stage/later-pictures')]);
    let measured: (width: number, height: number) => void = () => undefined;
    vi.stubGlobal(
      'ResizeObserver',
      class {
        constructor(tell: (entries: { contentRect: { width: number; height: number } }[]) => void) {
          this.tell = tell;
        }
        private readonly tell;
        observe(element: Element) {
          if (element.hasAttribute('data-pictures'))
            measured = (width, height) => this.tell([{ contentRect: { width, height } }]);
        }
        disconnect() {}
      },
    );
    const print = vi.fn();
    vi.stubGlobal('print', print);
    const store = createDeskStore({ script: SCRIPT, pictures: [], covered: [] });
    const room = () => (
      <DeskContext value={store}>
        <PictureRoom shown={['profile', 'staged', 'chase']} />
      </DeskContext>
    );
    const { rerender } = render(room());
    act(() => measured(1090, 660));
    await userEvent.click(await screen.findByRole('button', { name: 'Print the run-time table' }));
    expect(print).toHaveBeenCalledOnce();
    const sheet = () => [...document.querySelectorAll('body > div')].find((one) => one.querySelector('h1'));
    expect(sheet()).toHaveTextContent(cautions.deepCourse);
    // Paper has smaller letters, for which the room would be larger.
    document.documentElement.style.fontSize = '13px';
    rerender(room());
    expect(screen.getByRole('group', { name: 'Pictures that take turns' })).toBeInTheDocument();
    act(() => measured(1400, 900));
    expect(screen.queryByRole('group', { name: 'Pictures that take turns' })).not.toBeInTheDocument();
    expect(sheet()).toHaveTextContent(cautions.deepCourse);
    document.documentElement.removeAttribute('style');
    vi.unstubAllGlobals();
  });
});
