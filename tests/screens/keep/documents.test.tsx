import { fireEvent, render, screen } from '@testing-library/react';
import { useState } from 'react';
import { describe, expect, it, vi } from 'vitest';
import * as z from 'zod';
import { createBenchStore } from '@/app/bench/bench-store';
import { FRESH_SHEET } from '@/app/bench/sheet';
import { readKept } from '@/app/keep/document-kind';
import { changed, NO_HISTORY, redone, undone, type History } from '@/app/keep/history';
import { keptRecord, type RecordKind } from '@/app/keep/kept-record';
import { sayLastWords } from '@/app/keep/last-words';
import { useUndo } from '@/app/keep/use-undo';
import { draftKind, keepLastWords, keptDrafts } from '@/app/lessons/workshop/drafts';
import { useStatus } from '@/app/parts/status';
import { cautions } from '@/content/cautions';
import { memoryShelf } from '../memory-shelf';
import { saved, words, message, keptInTests } from './made-documents';

/** A kind made up for these tests: a note, which once was kept as a bare text. */
const noteKind: RecordKind<string> = {
  name: 'note',
  version: 2,
  schema: z.object({ version: z.literal(2), text: z.string() }).transform(({ text }) => text),
  migrate: (stored) => ('note' in stored ? { version: 2, text: stored.note } : stored),
  write: (text) => ({ version: 2, text }),
  words,
};
/** Another window writes the record of a name. */
const writeElsewhere = (name: string, record: unknown) => {
  localStorage.setItem(name, JSON.stringify(record));
  window.dispatchEvent(new StorageEvent('storage', { key: name, newValue: JSON.stringify(record) }));
};

keptInTests();

describe('undo and redo', () => {
  /** A text, and what was done to it: `+x` adds x, `+x typing` joins, and u and r undo and redo. */
  function after(...doings: string[]): string {
    let text = '';
    let history: History<string> = NO_HISTORY;
    for (const doing of doings) {
      if (doing.startsWith('+')) {
        const [more, joined] = doing.slice(1).split(' ');
        history = changed(history, text, joined);
        text += more;
        continue;
      }
      const to = (doing === 'u' ? undone : redone)(history, text);
      if (to) ({ moment: text, history } = to);
    }
    return text;
  }

  it('goes back and forth, and a change forgets what was undone', () => {
    expect(after('+a', '+b', 'u')).toBe('a');
    expect(after('+a', '+b', 'u', 'u', 'u', 'r')).toBe('a');
    expect(after('+a', '+b', 'u', 'u', 'r', 'r', 'r')).toBe('ab');
    expect(after('+a', '+b', 'u', '+c', 'r')).toBe('ac');
  });

  it('takes changes joined in a row as one', () => {
    expect(after('+a', '+b typing', '+c typing', 'u')).toBe('a');
    expect(after('+a typing', '+b drag', 'u')).toBe('a');
  });

  it('stops joining at an undo and at a redo, so that what is typed next is undone by itself', () => {
    expect(after('+a typing', 'u', 'r', '+b typing', 'u')).toBe('a');
    expect(after('+a', '+b typing', 'u', '+c typing', 'u')).toBe('a');
  });

  it('keeps 200 steps', () => {
    const many = Array.from({ length: 205 }, () => '+a');
    expect(after(...many, ...Array.from({ length: 300 }, () => 'u'))).toBe('aaaaa');
  });

  it('works for a value that a part of the screen holds', () => {
    function Note() {
      const [text, setText] = useState('');
      const undo = useUndo(text, setText);
      return (
        <>
          <input aria-label="Note" value={text} onChange={({ target }) => undo.change(target.value, 'typing')} />
          <button onClick={undo.undo} disabled={!undo.canUndo}>
            Undo
          </button>
          <button onClick={undo.redo} disabled={!undo.canRedo}>
            Redo
          </button>
        </>
      );
    }
    render(<Note />);
    const type = (value: string) => fireEvent.change(screen.getByLabelText('Note'), { target: { value } });
    const press = (name: string) => fireEvent.click(screen.getByRole('button', { name }));
    for (const text of ['a', 'ab']) type(text);
    press('Undo');
    expect(screen.getByLabelText('Note')).toHaveValue('');
    expect(screen.getByRole('button', { name: 'Undo' })).toBeDisabled();
    press('Redo');
    expect(screen.getByLabelText('Note')).toHaveValue('ab');
  });
});

describe('a record in the small storage', () => {
  const opened = () => {
    const heard: string[] = [];
    const kept = keptRecord(noteKind, (note) => heard.push(note));
    return { kept, heard };
  };

  it('is found again, in the form it was once kept in too', () => {
    opened().kept.keep('mine');
    expect(opened().kept.now()).toBe('mine');
    localStorage.setItem('note', '{"note":"of old"}');
    expect(opened().kept.now()).toBe('of old');
    expect(message()).toBeUndefined();
  });

  it('shows what another window has written, until it listens no more', () => {
    const { kept, heard } = opened();
    kept.keep('mine');
    const leave = kept.listen();
    writeElsewhere('note', { version: 2, text: 'theirs' });
    expect(heard).toEqual(['theirs']);
    expect(kept.isOthers()).toBe(false);
    leave();
    writeElsewhere('note', { version: 2, text: 'again' });
    expect(heard).toEqual(['theirs']);
    expect(kept.isOthers()).toBe(true);
  });

  it.each([
    ['spoilt', '{"text":', false],
    ['of another kind', '[1,2]', false],
    ['of this version with a part missing', '{"version":2}', false],
    ['of a newer version', '{"version":3,"text":"later","more":true}', true],
  ])('that is %s is set aside whole, told of once and handed over', async (_, text, newer) => {
    localStorage.setItem('note', text);
    const { kept } = opened();
    expect(kept.now()).toBeUndefined();
    expect(localStorage.getItem('note')).toBeNull();
    expect(localStorage.getItem('note.aside-1')).toBe(text);
    expect(message()?.text.startsWith(`${words.unread} It is set aside, not lost.`)).toBe(true);
    expect(message()?.text.includes('newer version')).toBe(newer);
    message()!.action!.run();
    await vi.waitFor(() => expect(saved).toHaveLength(1), { timeout: 20_000 });
    expect(JSON.parse(saved[0]!)).toEqual({ caution: cautions.general, record: text });
    useStatus.getState().clear();
    expect(kept.now()).toBeUndefined();
    expect(message()).toBeUndefined();
  });

  it('of a newer version that another window writes is not taken for a document', () => {
    const { kept, heard } = opened();
    kept.listen();
    writeElsewhere('note', { version: 3, text: 'later' });
    expect(heard).toEqual([]);
    expect(localStorage.getItem('note')).toContain('later');
  });
});

describe('a lesson in the making', () => {
  const OLD = { version: 1, name: 'lesson:a', text: 'title: Old', savedAt: '2026-11-25T10:00:00.000Z', writer: 'w' };
  const said = (change: object) =>
    sayLastWords(draftKind, 'gone lesson:a', {
      ...readKept(draftKind, OLD)!,
      revision: 'late',
      visit: 'gone',
      ...change,
    });

  it('kept before lessons had revisions opens, and other windows are told apart by who wrote it', async () => {
    const { drafts, unread } = await keptDrafts(memoryShelf({ 'lesson:a': OLD }));
    expect(unread).toEqual([]);
    expect(drafts).toMatchObject([{ name: 'lesson:a', text: 'title: Old', visit: 'w', revision: OLD.savedAt }]);
  });

  it('is found as it was left when its window closed before the shelf had answered', async () => {
    const shelf = memoryShelf({ 'lesson:a': OLD });
    said({ follows: OLD.savedAt, text: 'title: Last' });
    await keepLastWords(shelf);
    expect((await keptDrafts(shelf)).drafts.map(({ text }) => text)).toEqual(['title: Last']);
    expect(localStorage.length).toBe(0);
  });

  it('that another window has written since lies beside those last words', async () => {
    const shelf = memoryShelf({ 'lesson:a': OLD });
    said({ follows: 'older', text: 'title: Last' });
    await keepLastWords(shelf);
    const { drafts } = await keptDrafts(shelf);
    expect(Object.fromEntries(drafts.map(({ name, text }) => [name, text]))).toEqual({
      'lesson:a': 'title: Old',
      'lesson:a-gone': 'title: Last',
    });
  });
});

describe('the bench sheet', () => {
  it('is undone and redone, the typing of a run as one', () => {
    const store = createBenchStore();
    store.getState().open();
    const { change, undo, redo, settle, addUnit } = store.getState();
    for (const script of ['s', 'st', 'sta']) change({ script }, 'typing the run');
    settle();
    change({ script: 'stay' }, 'typing the run');
    addUnit();
    undo();
    undo();
    expect(store.getState().script).toBe('sta');
    undo();
    expect(store.getState()).toMatchObject({ script: FRESH_SHEET.script, past: [] });
    for (let steps = 0; steps < 3; steps += 1) redo();
    expect(store.getState()).toMatchObject({ script: 'stay', future: [] });
    expect(store.getState().units).toHaveLength(2);
    expect(createBenchStore().getState().units).toHaveLength(1);
    const again = createBenchStore();
    again.getState().open();
    expect(again.getState().units, 'what was redone is kept').toHaveLength(2);
  });

  it('goes on in the middle of a step after the clock was put back and the page opened again', () => {
    let wallS = 1_000_000;
    const first = createBenchStore(() => wallS);
    first.getState().open();
    first.getState().change({ marks: [1_000_000] });
    wallS += 45;
    expect(first.getState().clock.nowS(1_000_000)).toBe(1_000_045);
    wallS -= 86_400;
    expect(first.getState().clock.nowS(1_000_000)).toBe(1_000_045);
    first.getState().keepClock();
    wallS += 5;
    const again = createBenchStore(() => wallS);
    again.getState().open();
    expect(again.getState().clock.nowS(1_000_000)).toBe(1_000_050);
    expect(again.getState().clock.putBackS()).toBe(86_400);
    again.getState().keepClock();
    wallS -= 3600;
    const late = createBenchStore(() => wallS);
    late.getState().open();
    expect(late.getState().clock.nowS(1_000_000), 'put back while no page was open').toBe(1_000_050);
  });

  it('does not write where its clock stands over a sheet another window has kept unseen', () => {
    const store = createBenchStore();
    store.getState().open();
    store.getState().addUnit();
    const theirs = JSON.stringify({ version: 1, sheet: { ...FRESH_SHEET, units: [] } });
    localStorage.setItem('halftime.bench', theirs);
    store.getState().keepClock();
    expect(localStorage.getItem('halftime.bench')).toBe(theirs);
  });
});
