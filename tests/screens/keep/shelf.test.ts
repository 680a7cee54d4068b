import { beforeEach, describe, expect, it, vi } from 'vitest';
import * as z from 'zod';
import { startAutosave } from '@/app/keep/autosave';
import { readKept } from '@/app/keep/document-kind';
import { lastWords } from '@/app/keep/last-words';
import { readEach } from '@/app/keep/read-each';
import { stampSchema, type Shelved, type ShelvedKind } from '@/app/keep/shelved';
import { memoryShelf } from '../memory-shelf';
import { saved, words, message, keptInTests } from './made-documents';

const pageKind: ShelvedKind<{ text: string }> = {
  name: 'page',
  version: 1,
  schema: stampSchema.extend({ text: z.string() }),
  lastWords: 'page.last',
  beside: (theirs, ours) => (theirs.text === ours.text ? {} : { [`beside-${theirs.visit}`]: theirs }),
  words,
};
const page = (change: Partial<Shelved<{ text: string }>> = {}): Shelved<{ text: string }> => ({
  version: 1,
  revision: 'r1',
  visit: 'other',
  savedAt: '2026-11-25T10:00:00.000Z',
  text: 'theirs',
  ...change,
});

keptInTests();

describe('a document on the shelf', () => {
  function keeping(shelf = memoryShelf(), revision?: string) {
    let text = 'ours';
    const told: unknown[] = [];
    const autosave = startAutosave({
      kind: pageKind,
      shelf,
      visit: 'mine',
      revision,
      content: () => ({ text }),
      onKept: (beside) => told.push(Object.keys(beside)),
      onRefused: (reason) => told.push(reason),
    });
    const type = (next: string) => {
      text = next;
      autosave.changed('document');
    };
    const lying = () => readKept(pageKind, shelf.lying.get('page'))?.text;
    return { shelf, told, autosave, type, lying };
  }
  const settle = () => vi.advanceTimersByTimeAsync(3000);
  beforeEach(() => void vi.useFakeTimers());

  it('is written once it rests, and says which it was made from', async () => {
    const { shelf, type, lying } = keeping();
    type('a');
    await vi.advanceTimersByTimeAsync(400);
    type('ab');
    await vi.advanceTimersByTimeAsync(400);
    expect(lying()).toBeUndefined();
    await settle();
    expect(lying()).toBe('ab');
    const first = readKept(pageKind, shelf.lying.get('page'))!;
    expect(first.follows).toBeUndefined();
    type('abc');
    await settle();
    expect(readKept(pageKind, shelf.lying.get('page'))!.follows).toBe(first.revision);
  });

  it.each([
    ['a newer version’s', { version: 2, visit: 'newer', sheets: ['torn'] }, 'aside/page-newer'],
    ['spoilt', 'torn in two', undefined],
  ])('sets aside what lies there and can’t be read, being %s, and tells of it', async (_, stored, name) => {
    const { shelf, type, lying } = keeping();
    shelf.lying.set('page', stored);
    type('a');
    await settle();
    expect(lying()).toBe('a');
    const aside = [...shelf.lying].filter(([key]) => key.startsWith('aside/'));
    expect(aside.map(([, record]) => record)).toEqual([stored]);
    if (name !== undefined) expect(aside[0]![0]).toBe(name);
    expect(message()?.text).toContain('It is set aside, not lost.');
    message()!.action!.run();
    await vi.waitFor(() => expect(saved.join()).toContain('"torn'), { timeout: 20_000 });
    type('b');
    await settle();
    expect([...shelf.lying].filter(([key]) => key.startsWith('aside/'))).toHaveLength(1);
  });

  it('leaves what lies there and can’t be read where only the place looked at is other than it was', async () => {
    const { shelf, autosave } = keeping();
    shelf.lying.set('page', 'torn in two');
    autosave.changed('look');
    await settle();
    expect(shelf.lying.get('page')).toBe('torn in two');
  });

  it('is not written after its keeper was stopped, whatever was under way', async () => {
    const { autosave, type, lying, told } = keeping();
    type('a');
    void autosave.stop();
    expect(vi.getTimerCount()).toBe(0);
    type('b');
    autosave.hurry();
    expect(vi.getTimerCount()).toBe(0);
    await settle();
    expect([lying(), told, localStorage.length]).toEqual([undefined, [], 0]);
  });

  it('is still written when it was hurried before the stop, which waits for it', async () => {
    const { autosave, type, lying } = keeping();
    type('a');
    autosave.hurry();
    await autosave.stop();
    expect(lying()).toBe('a');
    expect(lastWords(pageKind)).toEqual([]);
  });

  it('that another window wrote meanwhile is kept beside, and told; the same is not', async () => {
    const differs = keeping(memoryShelf({ page: page() }), 'r0');
    differs.type('mine');
    await settle();
    expect(differs.lying()).toBe('mine');
    expect(differs.told).toEqual([['beside-other']]);
    expect(differs.shelf.lying.get('beside-other')).toMatchObject({ text: 'theirs' });
    const same = keeping(memoryShelf({ page: page() }), 'r0');
    same.type('theirs');
    await settle();
    expect(same.told).toEqual([[]]);
  });

  it('that it was made from is written over, and another window’s is not for the sake of a look', async () => {
    const own = keeping(memoryShelf({ page: page() }), 'r1');
    own.type('mine');
    await settle();
    expect(own.told).toEqual([[]]);
    const look = keeping(memoryShelf({ page: page() }), 'r0');
    look.autosave.changed('look');
    await settle();
    expect(look.lying()).toBe('theirs');
  });

  it('that could not be written is, whole, at the next change', async () => {
    const { shelf, told, type, autosave, lying } = keeping();
    shelf.refuses = 'full';
    type('a');
    await settle();
    shelf.refuses = undefined;
    autosave.changed('look');
    await settle();
    expect(told).toEqual(['full', []]);
    expect(lying()).toBe('a');
  });

  it('among many that cannot be read stays where it is', async () => {
    const shelf = memoryShelf({ page1: page(), page2: { version: 2 }, other: page() });
    const { read, unread } = await readEach(shelf, pageKind);
    expect(read).toEqual([page()]);
    expect(unread).toEqual([{ name: 'page2', record: { version: 2 } }]);
    expect(shelf.lying.size).toBe(3);
  });
});
