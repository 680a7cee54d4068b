import fc from 'fast-check';
import { beforeEach, describe, expect, it } from 'vitest';
import { keptDrafts } from '@/app/lessons/workshop/drafts';
import { progressKind } from '@/app/keep/lesson-progress';
import { restoreProgress, useProgress } from '@/app/lessons/player/progress-store';
import { withSeen } from '@/lib/lesson/progress';
import { readProgress } from '@/lib/lesson/read-progress';
import { memoryShelf } from '../../screens/memory-shelf';
import { damagedRecord, expectUnpolluted, promptly } from './hostile';
import { law } from '../law';
import { smallStorage } from './small-storage';

let local: Storage;
beforeEach(() => ({ local } = smallStorage()));

const SCRIPT = 'descend to 18 m at 18 m/min\nstay 20 min\nascend to surface at 9 m/min\n';
const PROGRESS = {
  lessons: {
    '04-no-stop-time': {
      at: 'begin',
      done: ['begin', 'foretell'],
      predictions: {
        foretell: { answer: { by: 'number', value: 12 }, reason: 'so', confidence: 'sure', right: true },
        drawn: {
          answer: { by: 'draw', sketch: [{ timeS: 0, value: 1 }] },
          reason: '',
          confidence: 'a guess',
          right: false,
        },
      },
      met: { own: SCRIPT },
      checks: { 'check/one': { seed: 1, right: true, tries: 2, rights: 1 } },
    },
  },
};
const DRAFT = { version: 1, name: 'lesson:a', text: 'title: Mine', savedAt: '2026-11-25T10:00:00.000Z', writer: 'b' };

describe('a damaged record', () => {
  it('of what was done in lessons is used piece by piece, and is taken further', () => {
    law(
      fc.property(damagedRecord(PROGRESS), (record) => {
        const read = promptly(() => readProgress(JSON.parse(JSON.stringify(record) ?? 'null')));
        expectUnpolluted(read);
        expect(readProgress(read)).toEqual(read);
        expect(withSeen(read, '04-no-stop-time', 'new').lessons['04-no-stop-time']!.seen).toContain('new');
      }),
      1000,
    );
  });

  it('of lessons that is none at all is set aside whole before anything is written', () => {
    law(
      fc.property(damagedRecord({ state: { progress: PROGRESS }, version: 1 }), (record) => {
        local.clear();
        const text = JSON.stringify(record) ?? 'null';
        local.setItem(progressKind.name, text);
        promptly(restoreProgress);
        useProgress.getState().update((before) => withSeen(before, '04-no-stop-time', 'new'));
        expectUnpolluted(useProgress.getState().progress);
        expect(JSON.parse(local.getItem(progressKind.name)!)).toMatchObject({
          version: 2,
          state: { progress: { lessons: { '04-no-stop-time': { seen: expect.arrayContaining(['new']) as unknown } } } },
        });
        const { version, state } = (record ?? {}) as { version?: unknown; state?: { progress?: unknown } | null };
        const known =
          (version === 1 || version === 2) && typeof state?.progress === 'object' && state.progress !== null;
        if (!known) expect(Object.values(local)).toContain(text);
      }),
      500,
    );
  });

  it('of a lesson in the workshop is told of, and the others are found', async () => {
    await law(
      fc.asyncProperty(damagedRecord(DRAFT), async (record) => {
        const { drafts, unread } = await keptDrafts(
          memoryShelf({ 'lesson:a': record, 'lesson:b': { ...DRAFT, name: 'lesson:b' } }),
        );
        expectUnpolluted([drafts, unread]);
        expect(drafts.length + unread.length).toBe(2);
        expect(drafts.map(({ name }) => name)).toContain('lesson:b');
      }),
      500,
    );
  });
});
