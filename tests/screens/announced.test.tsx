import { render, screen } from '@testing-library/react';
import userEvent from '@testing-library/user-event';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { Announcer } from '@/app/stage/announcing/Announcer';
import { announcing, type Listening } from '@/app/stage/announcing/announcing';
import { DeskContext } from '@/app/stage/desk-context';
import { createDeskStore } from '@/app/stage/desk-store';
import { READING_IDS, type ReadingId } from '@/app/stage/reading-ids';
import { pictures } from '@/app/stage/figures/all';
import type { PictureId } from '@/app/pictures/picture-ids';
import { watchesOf } from '@/app/pictures/scene-watches';
import { overstayed } from '@/content/scenarios/overstayed';
import { printClock } from '@/lib/quantity/duration';
import { eventText } from '@/lib/rules/all';
import { steered } from '@/lib/steer/run';
import { setCursor } from './set-cursor';

interface Said {
  readonly atMs: number;
  readonly text: string;
}

/** When a stop is first owed on a dive, s. */
const stopOwedS = (script: string) =>
  watchesOf(createDeskStore({ script, pictures: [], covered: [] }).getState().scene)[0]!.events.find(
    ({ kind }) => kind === 'stop-owed',
  )!.timeS;

const titleOf = (id: PictureId) => pictures[id].title;

function listening(covered: readonly ReadingId[] = [], where: Listening = { titleOf }) {
  const store = createDeskStore({ script: overstayed.script, pictures: ['profile', 'chase'], covered });
  const said: Said[] = [];
  const voice = announcing(
    store,
    () => 'metric',
    (text) => text !== '' && said.push({ atMs: performance.now(), text }),
    where,
  );
  return { store, said, voice, words: () => said.map(({ text }) => text).join(' ') };
}

/** Plays to the end as the desk does, a look every 50 ms. */
function playThrough({ store }: ReturnType<typeof listening>) {
  store.getState().setSpeed('30');
  store.getState().play();
  const endS = store.getState().scene.timeline.timeS.at(-1)!;
  for (let timeS = 0; timeS <= endS + 1.5; timeS += 1.5) {
    store.getState().setCursor(timeS);
    vi.advanceTimersByTime(50);
  }
  store.getState().pause();
  vi.advanceTimersByTime(5000);
}

describe('what is announced', () => {
  beforeEach(() => void vi.useFakeTimers());
  afterEach(() => void vi.useRealTimers());

  it('of a dive that plays is every event once, at least three seconds apart, and nothing of the clock', () => {
    const desk = listening();
    playThrough(desk);
    const events = watchesOf(desk.store.getState().scene)[0]!.events;
    for (const event of events) expect(desk.words().split(eventText(event, 'metric'))).toHaveLength(2);
    const gaps = desk.said.slice(1).map(({ atMs }, index) => atMs - desk.said[index]!.atMs);
    expect(Math.min(...gaps)).toBeGreaterThanOrEqual(3000);
    // No more than what happens: the events, and the no-stop time at 10, 5 and 1 min.
    expect(desk.said.length).toBeLessThanOrEqual(events.length + 3);
    expect(desk.words()).toMatch(/you may stay 10 min here.*you may stay 5 min here.*you may stay 1 min here/);
    // The stop with its minutes, and who leads, as the readings have them at that moment.
    const owed = desk.said.find(({ text }) => text.includes('a stop is owed'))!.text;
    expect(owed).toMatch(/You need to stop at 3 m for 1 min\./);
    expect(desk.words()).toMatch(/Compartment 1 leads\..*Compartment 2 leads\./);
  });

  it('gives nothing away of what is covered', () => {
    const desk = listening(READING_IDS);
    playThrough(desk);
    expect(new Set(desk.said.map(({ text }) => text))).toEqual(new Set(['Something happens here.']));
    desk.voice.where();
    expect(desk.said.at(-1)!.text).not.toMatch(/\d/);
  });

  it('beside a dive that shows only some readings is what its marks tell, and nothing of the others', () => {
    const unread = READING_IDS.filter((id) => id !== 'time' && id !== 'depth');
    const marked = listening([], { unread });
    playThrough(marked);
    expect(marked.words()).toContain('a stop is owed');
    expect(marked.words()).not.toMatch(/You need to stop|leads|you may stay/);
    marked.voice.where();
    expect(marked.said.at(-1)!.text).toMatch(/^Depth: 0\.0 m\. Time: 28:00\.$/);
    // No mark is seen where the dive is not drawn.
    const unmarked = listening([], { unread });
    unmarked.store.getState().change({ pictures: ['chase'] });
    vi.advanceTimersByTime(5000);
    unmarked.said.length = 0;
    playThrough(unmarked);
    expect(unmarked.words()).toMatch(/^(\S+ )?(the dive is over\.)?$|^At \d+:\d\d: the dive is over\.$/);
  });

  it('at another’s hand is what happens on the way, and where a jump has led', () => {
    const { store, said } = listening([], { led: true });
    for (let timeS = 0; timeS <= 16 * 60; timeS += 15) {
      store.getState().setCursor(timeS);
      vi.advanceTimersByTime(500);
    }
    vi.advanceTimersByTime(5000);
    expect(said.some(({ text }) => text.includes('a stop is owed'))).toBe(true);
    store.getState().setCursor(60);
    vi.advanceTimersByTime(500);
    expect(said.at(-1)!.text).toMatch(/^1:00, /);
  });

  it('of a dive under a hand on the lever is each event once, though the dive is worked out anew all the time', () => {
    const { store, said, words } = listening();
    store.getState().startRun();
    for (let tick = 1; tick < 300; tick += 1) {
      store.getState().steer(steered(store.getState().run!, Math.min(30, tick / 4), 0.16, 0.1));
      vi.advanceTimersByTime(16);
    }
    vi.advanceTimersByTime(5000);
    expect(said.length).toBeGreaterThan(0);
    expect(words().split('you went below 10 m')).toHaveLength(2);
  });

  it.each(['no-stop', 'ceiling', 'required-stop', 'time-to-surface'] as const)(
    'tells no stop to whoever asks while %s is covered, and all else',
    (id) => {
      const { store, said, voice } = listening([id]);
      store.getState().setCursor(17 * 60);
      voice.where();
      expect(said.at(-1)!.text).toBe('17:00. 30.0 m on air. Rate: steady.');
    },
  );

  it('of an edit is what it did to ceiling and stop, once it has settled; of undoing, that it is undone', () => {
    const { store, said } = listening();
    const shorter = overstayed.script.replace('stay 17 min', 'stay 8 min');
    for (const minutes of [14, 11, 8])
      store.getState().change({ script: overstayed.script.replace('stay 17 min', `stay ${minutes} min`) }, 'drag');
    vi.advanceTimersByTime(500);
    expect(said).toEqual([]);
    vi.advanceTimersByTime(200);
    expect(store.getState().script).toBe(shorter);
    expect(said.map(({ text }) => text)).toEqual([
      'No ceiling on this dive any more; its deepest was 2.2 m. No stop is asked for any more.',
    ]);
    store.getState().change({ script: overstayed.script.replace('stay 17 min', 'stay 16 min') });
    vi.advanceTimersByTime(700);
    store.getState().change({ script: overstayed.script });
    vi.advanceTimersByTime(700);
    expect(said.at(-1)!.text).toMatch(/^The deepest ceiling is 2\.2 m; it was 1\.\d m\. The stop is owed as before\.$/);
    for (const times of [1, 2]) {
      store.getState().undo();
      vi.advanceTimersByTime(700 * times);
    }
    expect(said.at(-1)!.text).toBe(
      'Undone. The script is as it was before. No ceiling on this dive any more; its deepest was 1.9 m. ' +
        'No stop is asked for any more.',
    );
    store.getState().undo();
    vi.advanceTimersByTime(700);
    expect(said.at(-1)!.text).toBe(
      'Undone. The script is as it was before. This dive now has a ceiling. At 19:21 it is deepest, 2.2 m. ' +
        'At 15:49 a stop is owed: there is a ceiling, and coming up you need to stop at 3 m. Before, no stop was owed.',
    );
    store.getState().redo();
    vi.advanceTimersByTime(700);
    expect(said.at(-1)!.text).toMatch(
      /^Done again\. The script is as you had changed it\. No ceiling on this dive any more/,
    );
  });

  it('of a deeper point is when the stop is owed, and when it was before', () => {
    const { store, said } = listening();
    const deeper = overstayed.script.replace('descend to 30 m', 'descend to 32 m');
    const [beforeS, nowS] = [overstayed.script, deeper].map(stopOwedS) as [number, number];
    expect(nowS).toBeLessThan(beforeS - 30);
    store.getState().change({ script: deeper });
    vi.advanceTimersByTime(700);
    expect(said.at(-1)!.text).toContain(` At ${printClock(Math.ceil(nowS))} a stop is owed`);
    expect(said.at(-1)!.text).toMatch(new RegExp(` Before, that was at ${printClock(Math.ceil(beforeS))}\\.$`));
  });

  it('of covering and of pictures is which', () => {
    const { store, said } = listening();
    store.getState().change({ covered: ['ceiling'] });
    vi.advanceTimersByTime(700);
    expect(said.at(-1)!.text).toBe('Covered: Ceiling.');
    // Where they are chosen, they are told of.
    store.getState().change({ pictures: ['profile', 'oxygen'] });
    vi.advanceTimersByTime(700);
    expect(said).toHaveLength(1);
    store.getState().undo();
    store.getState().undo();
    vi.advanceTimersByTime(700);
    expect(said.at(-1)!.text).toBe('Undone. Uncovered: Ceiling. Shown: The chase. Put away: Oxygen.');
  });

  it('of a mistake is where, what and how to mend it, once typing has paused', () => {
    const { store, said } = listening();
    for (const words of ['st', 'stay', 'stay lo', 'stay long'])
      store.getState().change({ script: overstayed.script.replace('stay 17 min', words) }, 'typing');
    expect(said).toEqual([]);
    vi.advanceTimersByTime(700);
    const line = overstayed.script.split('\n').findIndex((text) => text.startsWith('stay 17')) + 1;
    expect(said.map(({ text }) => text)).toEqual([
      expect.stringMatching(new RegExp(`^A mistake in the script in line ${line}: .*long.*\\.$`)),
    ]);
  });

  it('is nothing of a remark or a title in the script', () => {
    const { store, said } = listening();
    store.getState().change({ script: `${overstayed.script}# seen twice\n` });
    vi.advanceTimersByTime(5000);
    expect(said).toEqual([]);
  });

  it('is nothing while a desk is opened', () => {
    const { store, said } = listening();
    store
      .getState()
      .open(
        { script: overstayed.script.replace('17', '9'), pictures: [], covered: [], cursorS: 300, view: undefined },
        'fresh',
      );
    vi.advanceTimersByTime(5000);
    expect(said).toEqual([]);
  });
});

it('one key says where the diver is, twice if pressed twice', async () => {
  const store = createDeskStore({ script: overstayed.script, pictures: [], covered: [] }, false, 17 * 60);
  render(
    <DeskContext value={store}>
      <Announcer />
    </DeskContext>,
  );
  const voice = screen.getByRole('status');
  expect(voice).toBeEmptyDOMElement();
  await userEvent.keyboard('{F2}');
  expect(voice).toHaveTextContent(
    /^17:00\. 30\.0 m on air\. Rate: steady\. You need to stop at 3 m for \d min\. Time to surface: \d min\. Compartment \d leads\.$/,
  );
  const before = voice.firstElementChild;
  await userEvent.keyboard('{F2}');
  expect(voice.firstElementChild).not.toBe(before);
  await setCursor(store, 0);
  await userEvent.keyboard('{F2}');
  expect(voice).toHaveTextContent(/^0:00\. 0\.0 m on air\. Rate: steady\. Nothing is owed/);
});
