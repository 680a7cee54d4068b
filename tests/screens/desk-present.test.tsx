import { act, render, screen } from '@testing-library/react';
import userEvent from '@testing-library/user-event';
import { afterEach, describe, expect, it, vi } from 'vitest';
import { RunStage } from '@/app/lessons/player/stage/RunStage';
import type { RunStep } from '@/app/lessons/prepared';
import { DeskContext } from '@/app/stage/desk-context';
import { createDeskStore, cursorSample } from '@/app/stage/desk-store';
import { HeldHere } from '@/app/desk/HeldHere';
import { HoldAtEvents } from '@/app/stage/HoldAtEvents';
import { modelMomentOf } from '@/app/stage/model-moment';
import { Playback, PlaybackBar } from '@/app/stage/PlaybackBar';
import { momentAfter, momentBefore, momentsOf, type NamedTime } from '@/app/stage/moments';
import type { ReadingId } from '@/app/stage/reading-ids';
import { modelSayings } from '@/lib/sayings/model-readings';
import { presentedPanels } from '@/app/desk/present/panels';
import { doingOfKey, PRESENTER_KEYS } from '@/app/desk/present/presenter-keys';
import { usePreferences } from '@/app/parts/preferences';
import { isTypedIn } from '@/app/parts/typed-in';
import { watchesOf } from '@/app/pictures/scene-watches';
import { scenarios } from '@/content/scenarios/scenarios';
import { onDesk } from './on-desk';

function pressed(key: string, on: Element = document.body, more: KeyboardEventInit = {}) {
  if (on !== document.body) document.body.append(on);
  let doing: ReturnType<typeof doingOfKey>;
  const hear = (event: KeyboardEvent) => {
    doing = doingOfKey(event);
  };
  window.addEventListener('keydown', hear);
  on.dispatchEvent(new KeyboardEvent('keydown', { key, bubbles: true, ...more }));
  window.removeEventListener('keydown', hear);
  if (on !== document.body) on.remove();
  return doing;
}

function element(html: string): Element {
  const holder = document.createElement('div');
  holder.innerHTML = html;
  return holder.firstElementChild!;
}

describe('the keys of the presenter’s view', () => {
  it.each([
    ['PageDown', 'next'],
    ['ArrowRight', 'next'],
    ['PageUp', 'back'],
    ['b', 'cover'],
    ['B', 'cover'],
    ['.', 'cover'],
    [' ', 'play'],
    ['?', 'help'],
    ['Escape', 'leave'],
  ])('%s means %s', (key, doing) => {
    expect(pressed(key)).toBe(doing);
  });

  it('have no two meanings', () => {
    const keys = PRESENTER_KEYS.flatMap((one) => one.keys);
    expect(new Set(keys).size).toBe(keys.length);
  });

  it.each([
    ['b', '<input type="text">'],
    ['b', '<textarea></textarea>'],
    [' ', '<button>Cover</button>'],
    [' ', '<input type="checkbox">'],
    ['ArrowRight', '<input type="range">'],
    ['ArrowDown', '<div role="slider" tabindex="0"></div>'],
    ['ArrowDown', '<select><option>1</option></select>'],
    ['Escape', '<dialog open></dialog>'],
  ])('leave %j to what has the focus: %s', (key, html) => {
    expect(pressed(key, element(html))).toBeUndefined();
  });

  it('leave the browser its own', () => {
    expect(pressed('b', document.body, { ctrlKey: true })).toBeUndefined();
  });
});

describe('boxes that are typed in', () => {
  it.each([
    ['<input type="text">', true],
    ['<input type="number">', true],
    ['<textarea></textarea>', true],
    ['<input type="range">', false],
    ['<input type="checkbox">', false],
    ['<button>Go</button>', false],
  ])('%s: %s', (html, typed) => {
    expect(isTypedIn(element(html))).toBe(typed);
  });
});

const { scene } = createDeskStore({ script: scenarios[0].script, pictures: [], covered: [] }).getState();
const moments = momentsOf(scene, watchesOf(scene)[0]!, 'metric');

describe('moments to stop at', () => {
  it('are where the dive turns, in order, and where the ceiling comes and goes', () => {
    const times = moments.map(({ timeS }) => timeS);
    expect(times).toEqual([...times].sort((one, other) => one - other));
    for (const leg of scene.timeline.legs) expect(times.some((timeS) => Math.abs(timeS - leg.endS) < 1)).toBe(true);
    const appears = moments.find(({ name }) => name.includes('A ceiling appears.'))!;
    const first = scene.figures.ceilingM.findIndex((depthM) => depthM > 0);
    expect(Math.abs(appears.timeS - scene.timeline.timeS[first]!)).toBeLessThan(1);
    expect(moments.some(({ name }) => name.includes('The ceiling is gone.'))).toBe(true);
  });

  it('bring a clicker to the instant from which a stop is owed, where the readings say so', () => {
    const at = cursorSample({ scene, cursorS: 0 });
    const stopAt = (sample: number) => modelSayings(modelMomentOf(scene, sample), 'metric')['required-stop'].text;
    const none = stopAt(at);
    const clicks: number[] = [];
    for (let next = momentAfter(moments, 0); next; next = momentAfter(moments, next.timeS)) clicks.push(next.timeS);
    const first = clicks.find((cursorS) => stopAt(cursorSample({ scene, cursorS })) !== none)!;
    expect(stopAt(cursorSample({ scene, cursorS: first }) - 1)).toBe(none);
    expect(moments.find(({ timeS }) => timeS === first)!.happens).toBe(true);
  });

  it('lead through the dive and back, each once', () => {
    const there: number[] = [0];
    for (let next = momentAfter(moments, 0); next; next = momentAfter(moments, next.timeS)) there.push(next.timeS);
    expect(there).toEqual(moments.map(({ timeS }) => timeS));
    const back: number[] = [];
    for (let before = momentBefore(moments, Infinity); before; before = momentBefore(moments, before.timeS))
      back.push(before.timeS);
    expect(back.reverse()).toEqual(there);
  });
});

describe('playing that holds', () => {
  afterEach(() => {
    usePreferences.getState().setHolds('desk', false);
    vi.unstubAllGlobals();
  });

  function playing(covered: readonly ReadingId[] = []) {
    const { store } = onDesk(
      <>
        <HoldAtEvents />
        <HeldHere />
      </>,
      scenarios[0].script,
      [],
      covered,
    );
    const happenings = moments.filter(({ happens }) => happens);
    act(() => store.getState().play());
    return { store, happenings, to: (timeS: number) => act(() => store.getState().setCursor(timeS)) };
  }

  it('waits at the next thing that happens and says it, and one press goes on', () => {
    const { store, happenings, to } = playing();
    const [first, second] = happenings as [NamedTime, NamedTime];
    to(first.timeS - 5);
    expect(store.getState().playing).toBe(true);
    to(first.timeS + 7);
    expect(store.getState()).toMatchObject({ playing: false, cursorS: first.timeS, heldAtS: first.timeS });
    expect(screen.getByText(`${first.name} Play goes on.`)).toBeInTheDocument();
    act(() => store.getState().play());
    expect(screen.queryByText(/Play goes on/)).not.toBeInTheDocument();
    to(first.timeS + 0.5);
    expect(store.getState().playing).toBe(true);
    for (let timeS = first.timeS; store.getState().playing; timeS += 20) to(timeS);
    expect(store.getState().cursorS).toBe(second.timeS);
  });

  it('passes by where the dive only turns, lets a jump go where it wants, and looks on where it stands still', () => {
    const { store, happenings, to } = playing();
    const bottom = moments.find(({ happens, timeS }) => !happens && timeS > 0)!;
    to(bottom.timeS + 1);
    expect(store.getState().playing).toBe(true);
    to(happenings[0]!.timeS + 300);
    expect(store.getState().playing).toBe(true);
    act(() => store.getState().pause());
    to(happenings.at(-1)!.timeS - 1);
    to(happenings.at(-1)!.timeS + 1);
    expect(store.getState().heldAtS).toBeUndefined();
  });

  it('does not give away what a class is to find', () => {
    const { happenings, to } = playing(['ceiling']);
    to(happenings[0]!.timeS - 1);
    to(happenings[0]!.timeS + 1);
    expect(screen.getByText('Something happens here. Play goes on.')).toBeInTheDocument();
  });

  const { timeS: happensS, name: happens } = moments.find(({ happens }) => happens)!;
  const isHeld = () =>
    vi.waitFor(
      () => {
        expect(screen.getByRole('slider', { name: 'Time cursor' })).toHaveValue(`${Math.round(happensS)}`);
        expect(document.querySelector('[data-part="announced"]')).toHaveTextContent(happens);
        expect(document.querySelector('[data-part="announced"]')).toHaveTextContent(/Play goes on\.$/);
      },
      { timeout: 15_000 },
    );
  /** What is fetched with the voice has come. */
  const isThere = () =>
    vi.waitFor(() => expect(document.querySelector('[data-part="announced"]')).toBeInTheDocument(), {
      timeout: 15_000,
    });
  /** Frames that come so late, ms, as on a slow machine. */
  function frames(everyMs: number) {
    let nowMs = 0;
    vi.stubGlobal('requestAnimationFrame', (draw: FrameRequestCallback) =>
      setTimeout(() => draw((nowMs += everyMs)), 5),
    );
    vi.stubGlobal('cancelAnimationFrame', (id: number) => clearTimeout(id));
  }
  const press = (name: string) => userEvent.click(screen.getByRole('button', { name }));

  it('does so wherever the bar of time is, in a class and on a page of one dive too, and is remembered', async () => {
    const store = createDeskStore({ script: scenarios[0].script, pictures: [], covered: [] });
    store.getState().setCursor(happensS - 4);
    store.getState().setSpeed('10');
    const bar = (
      <DeskContext value={store}>
        <Playback />
        <PlaybackBar />
      </DeskContext>
    );
    const { unmount } = render(bar);
    await press('Hold when something happens');
    unmount();
    render(bar);
    await isThere();
    frames(2000);
    expect(screen.getByRole('button', { name: 'Hold when something happens' })).toHaveAttribute('aria-pressed', 'true');
    await press('Play');
    await isHeld();
    expect(screen.getByRole('button', { name: 'Play' })).toBeInTheDocument();
  });

  const run = { kind: 'run', id: 'run', title: 'Run', script: 'main', readings: ['time', 'no-stop'] };
  const ahead = { fromS: happensS - 12, toS: happensS + 900, untilS: undefined };
  const lesson = (show: readonly string[], watch: readonly object[] = []) => (
    <RunStage
      script={{ title: 'Main', script: scenarios[0].script }}
      step={{ ...run, ...ahead, show, watch } as unknown as RunStep}
    />
  );

  it('does so in a lesson’s run whose dive is shown, and where it is not gives nothing away', async () => {
    const { unmount } = render(lesson(['profile']));
    await isThere();
    await press('Speed and moments');
    await press('Hold when something happens');
    frames(400);
    await press('Play');
    await isHeld();
    unmount();
    render(lesson(['chase']));
    await press('Speed and moments');
    expect(screen.queryByRole('button', { name: 'Hold when something happens' })).not.toBeInTheDocument();
    await press('Play');
    await vi.waitFor(
      () => expect(Number(screen.getByRole<HTMLInputElement>('slider').value)).toBeGreaterThan(happensS + 5),
      { timeout: 15_000 },
    );
  });

  it('waits in a lesson at the moment to watch and then at what happens, though one frame reaches both', async () => {
    usePreferences.getState().setHolds('desk', true);
    render(lesson(['profile'], [{ atS: happensS - 5, html: 'Look.' }]));
    await isThere();
    frames(400);
    await press('Play');
    await screen.findByText('Look.');
    expect(screen.getByRole('slider', { name: 'Time cursor' })).toHaveValue(`${Math.round(happensS - 5)}`);
    await press('Go on playing');
    await isHeld();
  });
});

describe('what a class is shown', () => {
  it('is the desk’s pictures and the readings, until something else is chosen', () => {
    expect(presentedPanels({ pictures: ['chase'] })).toEqual(['chase', 'readings']);
    expect(presentedPanels({ pictures: ['chase'], presented: ['time'] })).toEqual(['time']);
  });
});
