import fc from 'fast-check';
import { beforeEach, describe, expect, it } from 'vitest';
import { createBenchStore } from '@/app/bench/bench-store';
import { useKeptSheets } from '@/app/bench/kept-sheets';
import { FRESH_SHEET } from '@/app/bench/sheet';
import { takeHandOver } from '@/app/parts/hand-over';
import { deskKind } from '@/app/desk/keep/desk-record';
import { deskViewSchema } from '@/app/stage/desk-view';
import { restoreDesk } from '@/app/desk/keep/restore-desk';
import { importDives, listDives } from '@/app/desk/keep/saved-dives';
import { readKept } from '@/app/keep/document-kind';
import { lastWords, sayLastWords } from '@/app/keep/last-words';
import { storageShelf } from '@/app/keep/storage-shelf';
import { usePreferences } from '@/app/parts/preferences';
import { preferencesKey } from '@/app/parts/theme';
import { cautions } from '@/content/cautions';
import { parseRun } from '@/lib/bench/chamber-run';
import { expectedOf } from '@/lib/bench/expected';
import { tookOf } from '@/lib/bench/live-run';
import { readStoredDives, writeStoredDives } from '@/lib/files/records/stored-dives';
import { memoryShelf } from '../../screens/memory-shelf';
import { damagedRecord, expectUnpolluted, promptly } from './hostile';
import { law } from '../law';
import { smallStorage } from './small-storage';

let local: Storage;
let session: Storage;
beforeEach(() => ({ local, session } = smallStorage()));

const SCRIPT = 'descend to 18 m at 18 m/min\nstay 20 min\nascend to surface at 9 m/min\n';
const VIEW = {
  pictures: ['profile', 'chase'],
  covered: ['no-stop'],
  presented: ['log'],
  cursorS: 600,
  view: { startS: 0, endS: 900 },
  unit: 1,
  overlay: { title: 'Another', script: SCRIPT },
  rules: { imposedStop: { on: true } },
};
const DESK = {
  version: 1 as const,
  revision: 'a',
  follows: 'b',
  visit: 'c',
  savedAt: '2026-11-25T10:00:00.000Z',
  script: SCRIPT,
  desk: VIEW,
};
const DIVE = {
  id: 'a',
  title: 'A reef',
  script: SCRIPT,
  changedAt: '2026-11-25T10:00:00.000Z',
  view: VIEW,
  note: 'mine',
};
const SHEET = {
  version: 1,
  sheet: {
    ...FRESH_SHEET,
    readings: { 'unit-1': { ten: { depthM: 9.8, noStopMin: 'over', stopM: 0, rateAlarm: false, noFlyH: 2 } } },
    marks: [0, 60, 120],
  },
};
const PREFERENCES = { state: { units: 'imperial', theme: 'dark', tour: 'settled' }, version: 1 };

describe('a damaged record', () => {
  it('of the desk is the desk or is set aside whole', async () => {
    await law(
      fc.asyncProperty(damagedRecord(DESK), fc.boolean(), async (record, said) => {
        local.clear();
        const shelf = memoryShelf({ desk: record });
        if (said) local.setItem('halftime.desk.last', JSON.stringify({ c: record, d: DESK }));
        const read = promptly(() => readKept(deskKind, record));
        expectUnpolluted(read);
        const restored = await restoreDesk(shelf, undefined);
        expectUnpolluted(restored);
        if (read === undefined && record !== undefined) {
          expect(restored.setAside?.name).toMatch(/^aside\//);
          expect(await shelf.read(restored.setAside!.name)).toEqual(record);
        }
        expect(deskViewSchema.safeParse(restored.desk?.view ?? VIEW).success).toBe(true);
      }),
      800,
    );
  });

  it('among a closed window’s last words leaves the others to be found', () => {
    law(
      fc.property(damagedRecord({ c: DESK }), (words) => {
        local.setItem('halftime.desk.last', JSON.stringify(words) ?? 'null');
        expectUnpolluted(promptly(() => lastWords(deskKind)));
        sayLastWords(deskKind, 'mine', { ...DESK, visit: 'mine', desk: undefined });
        expect(lastWords(deskKind).map(({ visit }) => visit)).toContain('mine');
        expectUnpolluted();
      }),
      500,
    );
  });

  it('among the saved dives, in this browser or in a file, is kept and told of, and the others are read', async () => {
    await law(
      fc.asyncProperty(damagedRecord(DIVE), async (record) => {
        const shelf = memoryShelf({ 'dive/a': record, 'dive/sound': { ...DIVE, id: 'sound' } });
        const { dives, unread } = await listDives(shelf);
        expectUnpolluted([dives, unread]);
        expect(dives.length + unread.length).toBe(2);
        expect(dives.map(({ id }) => id)).toContain('sound');
        const written = readStoredDives(writeStoredDives(dives, unread));
        expect(written).toMatchObject({ ok: true });
        if (written.ok) expect(written.dives.length + written.unread.length).toBe(2);
        const report = await importDives(
          memoryShelf({}),
          JSON.stringify({ format: 'halftime dives', version: 1, caution: cautions.general, dives: [record, DIVE] }),
        );
        expect(report.ok).toBe(true);
        for (const sentence of report.sentences) expect(sentence).toMatch(/\S.*\.$/);
      }),
      800,
    );
  });

  it('of a file of dives is read or refused in words', () => {
    law(
      fc.property(damagedRecord({ format: 'halftime dives', version: 1, dives: [DIVE, DIVE] }), (file) => {
        const read = promptly(() => readStoredDives(JSON.stringify(file) ?? 'null'));
        expectUnpolluted(read);
        if (!read.ok) expect(`${read.what} ${read.mend}`).toMatch(/\.$/);
      }),
      800,
    );
  });

  it('in the small storage that stands in for a database leaves the others to be read', async () => {
    await law(
      fc.asyncProperty(damagedRecord({ desk: DESK, 'dive/a': DIVE }), async (records) => {
        local.setItem('halftime.desk.records', JSON.stringify(records) ?? 'null');
        const shelf = storageShelf();
        await restoreDesk(shelf, undefined);
        await listDives(shelf);
        await shelf.change('dive/b', () => ({ 'dive/b': { ...DIVE, id: 'b' } }));
        expect((await listDives(shelf)).dives.map(({ id }) => id)).toContain('b');
        expectUnpolluted(await shelf.readAll(''));
      }),
      500,
    );
  });

  it('of the bench is the sheet, with all its sums, or is set aside whole before anything is written', () => {
    law(
      fc.property(damagedRecord(SHEET), (record) => {
        local.clear();
        const text = JSON.stringify(record) ?? 'null';
        local.setItem('halftime.bench', text);
        const store = createBenchStore();
        promptly(() => store.getState().open());
        const { script, settings, units, readings, marks } = store.getState();
        expectUnpolluted([settings, units, readings, marks]);
        const read = promptly(() => parseRun(script));
        if (read.ok && script.length < 500)
          for (const unit of units.slice(0, 1))
            promptly(() => expectedOf(read.run, settings, unit, tookOf(read.run, marks)), 6000);
        store.getState().addUnit();
        store.getState().setReading('unit-1', 'ten', { depthM: 10 });
        store.getState().undo();
        expect(JSON.parse(local.getItem('halftime.bench')!)).toMatchObject({ version: 1 });
        if (script === FRESH_SHEET.script && !Object.hasOwn(readings, 'unit-1') && marks.length === 0)
          expect(Object.values(local)).toContain(text);
      }),
      300,
    );
  });

  it('of kept sheets is their list, or is set aside whole before another is kept', () => {
    const outcomes = [{ unit: 'Unit 1', ruling: 'in' as const, farthestM: 0.2, faults: ['button stuck' as const] }];
    const sheets = [{ id: '1', keptAt: '2026-05-01T10:00:00.000Z', sheet: FRESH_SHEET, outcomes }];
    law(
      fc.property(damagedRecord({ version: 1, sheets }), (record) => {
        local.clear();
        const text = JSON.stringify(record) ?? 'null';
        local.setItem('halftime.bench-sheets', text);
        const close = useKeptSheets.getState().open();
        const found = useKeptSheets.getState().sheets.length;
        useKeptSheets.getState().add(FRESH_SHEET, []);
        close();
        const kept = JSON.parse(local.getItem('halftime.bench-sheets')!) as { sheets: unknown[] };
        expect(kept.sheets).toHaveLength(found + 1);
        expectUnpolluted(kept);
        if (found === 0 && !text.includes('"sheets":[]')) expect(Object.values(local)).toContain(text);
      }),
      200,
    );
  });

  it('of choices leaves choices that there are', async () => {
    await law(
      fc.asyncProperty(damagedRecord(PREFERENCES), async (record) => {
        local.setItem(preferencesKey, JSON.stringify(record) ?? 'null');
        await usePreferences.persist.rehydrate();
        const { units, theme } = usePreferences.getState();
        expect(['metric', 'imperial']).toContain(units);
        expect(typeof theme).toBe('string');
        expectUnpolluted();
      }),
      500,
    );
  });

  it('left for the desk by another screen is a dive or nothing', () => {
    law(
      fc.property(
        fc.oneof(
          damagedRecord({ version: 1, script: SCRIPT, title: 'A reef' }).map(
            (record) => JSON.stringify(record) ?? 'null',
          ),
          fc.string({ unit: 'binary' }),
        ),
        (text) => {
          session.setItem('halftime:hand-over', text);
          const taken = promptly(takeHandOver);
          expectUnpolluted(taken);
          if (taken) expect([typeof taken.script, typeof taken.title]).toEqual(['string', 'string']);
          expect(takeHandOver()).toBeUndefined();
        },
      ),
      800,
    );
  });
});
