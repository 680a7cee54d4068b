import { fireEvent, render, screen, within } from '@testing-library/react';
import userEvent from '@testing-library/user-event';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { Desk } from '@/app/desk/Desk';
import { createDeskStore } from '@/app/stage/desk-store';
import { deskKind, type DeskRecord } from '@/app/desk/keep/desk-record';
import { keepDesk } from '@/app/desk/keep/keep-desk';
import { deskViewSchema } from '@/app/stage/desk-view';
import { firstRemark, withTitle } from '@/app/pictures/dive-title';
import { restoreDesk } from '@/app/desk/keep/restore-desk';
import { importDives, listDives, saveDive } from '@/app/desk/keep/saved-dives';
import { DESK } from '@/app/keep/dive-on-desk';
import { readKept } from '@/app/keep/document-kind';
import * as words from '@/app/keep/last-words';
import { storageShelf } from '@/app/keep/storage-shelf';
import { scenarios } from '@/content/scenarios/scenarios';
import { memoryShelf } from './memory-shelf';
import { followed } from './set-cursor';

const [ready] = scenarios;
const REEF = '# A reef\ngas: air\n\ndescend to 18 m at 18 m/min\nstay 20 min\nascend to surface at 9 m/min\n';
const WRECK = REEF.replace('# A reef', '# A wreck').replace('18 m at', '24 m at');

const readDeskRecord = (stored: unknown) => readKept(deskKind, stored);
const lastWords = () => words.lastWords(deskKind);
const sayLastWords = (said: DeskRecord) => words.sayLastWords(deskKind, said.visit, said);
const desk = () => createDeskStore({ script: ready.script, pictures: ['profile', 'chase'], covered: [] });
const view = deskViewSchema.parse({ pictures: ['profile'], covered: ['ceiling'], cursorS: 60 });

function record(change: Partial<DeskRecord>): DeskRecord {
  return {
    version: 1,
    revision: 'r1',
    visit: 'before',
    savedAt: '2026-11-25T10:00:00.000Z',
    script: REEF,
    desk: view,
    ...change,
  };
}

beforeEach(() => localStorage.clear());
afterEach(() => vi.useRealTimers());

describe('covering readings one by one', () => {
  it('covers and uncovers a reading by its own button, with the focus staying where the hand is', async () => {
    render(<Desk />);
    const ceiling = within(await screen.findByRole('group', { name: 'Ceiling' }));
    fireEvent.change(screen.getByRole('slider', { name: 'Time cursor' }), { target: { value: '0' } });
    await followed();
    ceiling.getByRole('button', { name: 'Cover Ceiling' }).focus();
    await userEvent.keyboard('{Enter}');
    expect(ceiling.queryByText('none')).not.toBeInTheDocument();
    expect(ceiling.getByRole('button', { name: 'Uncover Ceiling' })).toHaveFocus();
    expect(screen.getByRole('group', { name: 'Depth' })).toHaveTextContent('0.0');
    await userEvent.keyboard('{Enter}');
    expect(ceiling.getByText('none')).toBeInTheDocument();
    expect(ceiling.getByRole('button', { name: 'Cover Ceiling' })).toHaveFocus();
  });

  it('does not give a stop away by the colour of what is covered', async () => {
    render(<Desk />);
    const cursor = screen.getByRole('slider', { name: 'Time cursor' });
    fireEvent.change(cursor, { target: { value: '1000' } });
    const ceiling = await screen.findByRole('group', { name: 'Ceiling' });
    expect(ceiling.className).toContain('stop');
    await userEvent.click(within(ceiling).getByRole('button', { name: 'Cover Ceiling' }));
    expect(ceiling.className).not.toContain('stop');
  });
});

describe('finding the last desk again', () => {
  it('takes the record on the shelf, and passes over pictures and readings this version does not know', async () => {
    const shelf = memoryShelf({
      [DESK]: { ...record({}), desk: { ...view, pictures: ['profile', 'hologram'], covered: ['mood', 'ceiling'] } },
    });
    const { desk: found } = await restoreDesk(shelf, undefined);
    expect(found).toMatchObject({ script: REEF, view: { pictures: ['profile'], covered: ['ceiling'] } });
  });

  it('keeps the dive where how the desk looked is no longer understood', async () => {
    const shelf = memoryShelf({ [DESK]: { ...record({}), desk: 'upside down' } });
    expect((await restoreDesk(shelf, undefined)).desk).toEqual({ script: REEF, view: undefined });
  });

  it.each([['a string'], [{ version: 1, script: 7 }], [{ ...record({}), version: 2 }]])(
    'sets a record that is not one aside, whole: %j',
    async (spoilt) => {
      const shelf = memoryShelf({ [DESK]: spoilt });
      const { desk: found, setAside } = await restoreDesk(shelf, undefined);
      expect(found).toBeUndefined();
      expect(shelf.lying.get(setAside!.name)).toEqual(spoilt);
      expect(shelf.lying.has(DESK)).toBe(false);
    },
  );

  it.each([
    ['later by the clock', '2026-11-25T10:00:05.000Z'],
    ['after the clock was put back', '2025-11-25T10:00:05.000Z'],
  ])(
    'prefers the last words of a window to the record they follow, %s, and does not keep what they were made from',
    async (_, savedAt) => {
      const shelf = memoryShelf({ [DESK]: record({}) });
      sayLastWords(record({ revision: 'r2', follows: 'r1', visit: 'w', savedAt, script: WRECK }));
      const { desk: found, found: saved } = await restoreDesk(shelf, undefined);
      expect(found?.script).toBe(WRECK);
      expect(saved).toEqual([]);
      expect(readDeskRecord(shelf.lying.get(DESK))?.script).toBe(WRECK);
      expect(lastWords()).toEqual([]);
    },
  );

  it('opens this window’s own desk, and puts another window’s last words among the saved dives', async () => {
    const shelf = memoryShelf();
    sayLastWords(record({ visit: 'mine', savedAt: '2026-11-25T10:00:00.000Z' }));
    sayLastWords(record({ visit: 'other', revision: 'r9', savedAt: '2026-11-25T11:00:00.000Z', script: WRECK }));
    const { desk: found, found: saved } = await restoreDesk(shelf, 'mine');
    expect(found?.script).toBe(REEF);
    expect(saved).toEqual(['A wreck (left on the desk)']);
    expect((await listDives(shelf)).dives.map(({ script }) => script)).toEqual([WRECK]);
  });

  it('still opens the desk where nothing can be written, and forgets nothing', async () => {
    const shelf = memoryShelf();
    shelf.refuses = 'full';
    sayLastWords(record({ visit: 'mine' }));
    expect((await restoreDesk(shelf, 'mine')).desk?.script).toBe(REEF);
    expect(lastWords()).toHaveLength(1);
  });
});

describe('keeping the desk as it changes', () => {
  const settle = () => vi.advanceTimersByTimeAsync(3000);

  function keeping(shelf: ReturnType<typeof memoryShelf>, visit: string, revision?: string) {
    const store = desk();
    const told: unknown[] = [];
    const autosave = keepDesk(store, {
      shelf,
      visit,
      revision,
      onKept: (beside) => told.push(Object.keys(beside).length > 0 ? 'kept over another' : 'kept'),
      onRefused: (reason) => told.push(reason),
    });
    return { store, told, autosave };
  }

  it('writes a desk that was touched once it rests, and one that was not never', async () => {
    vi.useFakeTimers();
    const shelf = memoryShelf();
    const { store, told } = keeping(shelf, 'a');
    await settle();
    expect(shelf.lying.size).toBe(0);
    for (const script of [WRECK, `${WRECK}#`, REEF]) store.getState().change({ script }, 'typing');
    await settle();
    expect(readDeskRecord(shelf.lying.get(DESK))?.script).toBe(REEF);
    expect(told).toEqual(['kept']);
  });

  it('puts what another window wrote meanwhile among the saved dives, once however often they take turns', async () => {
    vi.useFakeTimers();
    const shelf = memoryShelf();
    const one = keeping(shelf, 'one');
    const two = keeping(shelf, 'two');
    for (let turn = 0; turn < 3; turn += 1) {
      one.store.getState().change({ script: `${REEF}# ${turn}` });
      await settle();
      two.store.getState().change({ script: `${WRECK}# ${turn}` });
      await settle();
    }
    expect(readDeskRecord(shelf.lying.get(DESK))?.script).toBe(`${WRECK}# 2`);
    const { dives } = await listDives(shelf);
    expect(dives.map(({ script }) => script).sort()).toEqual([`${REEF}# 2`, `${WRECK}# 1`].sort());
    expect(two.told.at(-1)).toBe('kept over another');
  });

  it('does not write over another window only because the cursor moved', async () => {
    vi.useFakeTimers();
    const shelf = memoryShelf({ [DESK]: record({ visit: 'other', revision: 'theirs' }) });
    const { store } = keeping(shelf, 'mine', 'ours');
    store.getState().setCursor(300);
    await settle();
    expect(readDeskRecord(shelf.lying.get(DESK))?.revision).toBe('theirs');
  });

  it('tells why it could not write, and writes the whole at the next change', async () => {
    vi.useFakeTimers();
    const shelf = memoryShelf();
    const { store, told } = keeping(shelf, 'a');
    shelf.refuses = 'full';
    store.getState().change({ script: REEF });
    await settle();
    shelf.refuses = undefined;
    store.getState().setCursor(60);
    await settle();
    expect(told).toEqual(['full', 'kept']);
    expect(readDeskRecord(shelf.lying.get(DESK))).toMatchObject({ script: REEF, desk: { cursorS: 60 } });
  });

  it('leaves last words at once when the window goes', () => {
    vi.useFakeTimers();
    const { store, autosave } = keeping(memoryShelf(), 'a');
    store.getState().change({ script: REEF });
    autosave.hurry();
    expect(lastWords().map(({ script }) => script)).toEqual([REEF]);
  });
});

describe('saved dives', () => {
  it('hand back the dive they replace', async () => {
    const shelf = memoryShelf();
    await saveDive(shelf, 'Monday', REEF, view);
    const { before } = await saveDive(shelf, 'Monday', WRECK, view);
    expect(before?.script).toBe(REEF);
    expect((await listDives(shelf)).dives.map(({ script }) => script)).toEqual([WRECK]);
  });

  it('never write over a dive that is here with one that comes in', async () => {
    const shelf = memoryShelf();
    const { dive } = await saveDive(shelf, 'Monday', REEF, view);
    const coming = {
      format: 'halftime dives',
      version: 1,
      dives: [
        { ...dive, script: WRECK },
        { ...dive, id: 'again' },
      ],
    };
    const { sentences } = await importDives(shelf, JSON.stringify(coming));
    expect(sentences).toEqual(['1 dive brought in.', '1 dive left out: the same is here already.']);
    const titles = Object.fromEntries((await listDives(shelf)).dives.map(({ title, script }) => [title, script]));
    expect(titles).toEqual({ Monday: REEF, 'Monday (2)': WRECK });
  });

  it('show what can be read where one record cannot, and lose neither', async () => {
    const shelf = memoryShelf({ 'dive/spoilt': { title: 3 } });
    await saveDive(shelf, 'Monday', REEF, view);
    const { dives, unread } = await listDives(shelf);
    expect(dives).toHaveLength(1);
    expect(unread.map(({ record: kept }) => kept)).toEqual([{ title: 3 }]);
  });
});

describe('the small storage', () => {
  it('keeps records, and sets a spoilt store aside in the next change', async () => {
    const shelf = storageShelf();
    await shelf.change('a', () => ({ a: 1, b: 2 }));
    expect(await shelf.read('b')).toBe(2);
    localStorage.setItem('halftime.desk.records', '{"a":');
    expect(await shelf.read('a')).toBeUndefined();
    await shelf.change('a', () => ({ a: 3 }));
    expect(Object.fromEntries(await shelf.readAll(''))).toEqual({ a: 3, 'aside/records': '{"a":' });
  });

  it('says that it is blocked, and that it is full, apart', async () => {
    const shelf = storageShelf();
    const storage = vi.spyOn(window, 'localStorage', 'get');
    storage.mockImplementation(() => {
      throw new DOMException('no', 'SecurityError');
    });
    await expect(shelf.change('a', () => ({ a: 1 }))).rejects.toMatchObject({ reason: 'blocked' });
    const lying = new Map<string, string>();
    storage.mockReturnValue({
      getItem: (name: string) => lying.get(name) ?? null,
      setItem(name: string, value: string) {
        if (value.length > 10) throw new DOMException('no', 'QuotaExceededError');
        lying.set(name, value);
      },
      removeItem: (name: string) => void lying.delete(name),
    } as unknown as Storage);
    await expect(shelf.change('a', () => ({ a: 'a long record' }))).rejects.toMatchObject({ reason: 'full' });
    storage.mockRestore();
  });
});

describe('what a dive is called', () => {
  it.each([
    [REEF, 'A reef'],
    ['gas: air\n\n  ## Second  \nstay 1 min # not this', 'Second'],
    ['gas: air # nor this\n', undefined],
    [`# ${'long '.repeat(40)}`, `${'long '.repeat(15)}long…`],
  ])('%j', (script, title) => {
    expect(firstRemark(script)).toBe(title);
  });

  it.each([
    ['# A reef\ngas: air\n', '# Tuesday\ngas: air\n'],
    ['\n# A reef\n# the wall\n', '\n# Tuesday\n# the wall\n'],
    ['gas: air\n# the wall\n', '# Tuesday\ngas: air\n# the wall\n'],
    ['# A reef\r\ngas: air\r\n', '# Tuesday\r\ngas: air\r\n'],
    ['# Tuesday\ngas: air\n', '# Tuesday\ngas: air\n'],
  ])('follows what it is saved or renamed as: %j', (script, titled) => {
    expect(withTitle(script, 'Tuesday')).toBe(titled);
    expect(firstRemark(withTitle(script, 'Tuesday'))).toBe('Tuesday');
  });
});
