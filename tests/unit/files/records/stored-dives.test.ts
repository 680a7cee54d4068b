import { describe, expect, it } from 'vitest';
import { cautions } from '@/content/cautions';
import { readStoredDives, writeStoredDives, type StoredDive } from '@/lib/files/records/stored-dives';

const dives: StoredDive[] = [
  { id: 'a', title: 'First', script: 'stay 20 min', changedAt: '2026-05-01T10:00:00Z' },
  { id: 'b', title: '', script: '', notes: { mine: ['kept', 1, null] } },
];

const file = (records: unknown[], version = 1) => JSON.stringify({ format: 'halftime dives', version, dives: records });

describe('saved dives as a file', () => {
  it('read back the same, with what else they said', () => {
    expect(readStoredDives(writeStoredDives(dives))).toEqual({ ok: true, dives, unread: [] });
  });

  it('carry the caution', () => {
    expect(JSON.parse(writeStoredDives(dives)).caution).toBe(cautions.general);
  });

  it('lose nothing to a bad record: the others are read, and it is told of and written back', () => {
    const bad = [{ id: 'c', script: 5 }, null, 'text', { ...dives[0] }];
    const read = readStoredDives(file([...bad.slice(0, 3), ...dives, bad[3]]));
    if (!read.ok) throw new Error(read.what);
    expect(read.dives).toEqual(dives);
    expect(read.unread.map(({ number }) => number)).toEqual([1, 2, 3, 6]);
    expect(read.unread[0]!.what).toMatch(/^“title” is missing/);
    expect(read.unread[3]!.what).toBe('Another record has the same id.');
    expect(JSON.parse(writeStoredDives(read.dives, read.unread)).dives).toEqual([...dives, ...bad]);
  });

  it.each([
    ['not json', 'not sound JSON'],
    ['{"dives": []}', 'not a file of saved dives'],
    ['[]', 'not a file of saved dives'],
    [file([], 2), 'of version 2, and version 1 is read here'],
  ])('are refused from %j in words', (text, what) => {
    const read = readStoredDives(text);
    expect(read.ok ? '' : read.what).toContain(what);
    expect(read.ok ? '' : read.mend).not.toBe('');
  });

  it('are read from a file with a byte order mark', () => {
    expect(readStoredDives(`\uFEFF${file(dives)}`).ok).toBe(true);
  });
});
