// @module-tag in-turn
import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { printedSamples } from '@/app/desk/keep/print-times';
import { routes } from '@/app/parts/routes';
import { leadingCompartment } from '@/app/pictures/leading';
import { sceneOf, type Scene } from '@/app/pictures/scene';
import { watchesOf } from '@/app/pictures/scene-watches';
import { figuresAt } from '@/lib/ascent/figures';
import { sampleAt } from '@/lib/dive/timeline';
import { encodeState } from '@/lib/files/links/share-link';
import { printClock } from '@/lib/quantity/duration';
import type { UnitSystem } from '@/lib/quantity/unit-system';
import { eventText } from '@/lib/rules/all';
import { shownAt } from '@/lib/rules/unit/shown';
import { modelSayings, standingOf, type ModelReadingId } from '@/lib/sayings/model-readings';
import type { Saying } from '@/lib/sayings/saying';
import { sayStanding } from '@/lib/sayings/stop-state';
import { unitSayings } from '@/lib/sayings/unit-readings';
import { openTools, restored } from './kept-desk';
import { browserVisits } from './visit';
import { diveOf } from '../unit/read';

/*
 * Holds each surface to the table of sayings, figure by figure. Laws hold the table to the engine
 * (`tests/laws/sayings.test.ts`), so that together a figure is held where it is read.
 */

const visit = browserVisits();

/** One dive that needs stops under two unlike gradient factors, and one that comes near its limit and up too fast. */
const DIVES = {
  'with stops': {
    script: `gas: 28%
gradient factors: 35/80
setup: Air unit, gas air

descend to 33 m at 18 m/min
stay 24 min
ascend to 9 m at 9 m/min
stay 2 min
ascend to 3 m at 9 m/min
stay 14 min
ascend to surface at 9 m/min
`,
    // On the way down, near the limit, past it, on the way up, at the last stop, and up.
    instantsS: [60, 600, 1200, 1560, 2000, 2700],
  },
  'without stops': {
    script: `gas: air
gradient factors: 85/85
water: salt

descend to 21 m at 18 m/min
stay 31 min
ascend to 8 m at 30 m/min
stay 1 min
ascend to 5 m at 9 m/min
stay 3 min
ascend to surface at 9 m/min
`,
    instantsS: [30, 905, 1900, 1955, 2120, 2240],
  },
} as const;

const PANEL = [
  'depth',
  'time',
  'no-stop',
  'ceiling',
  'required-stop',
  'time-to-surface',
  'supersaturation',
  'surfacing-supersaturation',
] as const satisfies readonly ModelReadingId[];

const PRINTED = ['time', 'depth', 'gas', ...PANEL.slice(2)] as const satisfies readonly ModelReadingId[];

function sceneOfScript(script: string): Scene {
  return sceneOf(diveOf(script));
}

function modelAt({ timeline, figures }: Scene, sample: number) {
  return { timeline, sample, now: figuresAt(timeline, figures, sample) };
}

async function openDive(page: Page, script: string, pictures: readonly string[]) {
  const link = encodeState({ script, view: { pictures, covered: [], cursorS: 0 } });
  if (!link.ok) throw new Error(link.what);
  await page.goto(`${routes.desk.path}#${link.fragment}`);
  await restored(page);
}

async function goTo(page: Page, timeS: number) {
  await page.getByRole('slider', { name: 'Time cursor' }).fill(String(timeS));
  await page.waitForFunction(
    (clock) => document.querySelector('[role="group"][aria-label="Time"] [data-room]')?.textContent === clock,
    printClock(timeS),
  );
}

interface Tile {
  readonly value: string;
  readonly unit: string;
  readonly note: string;
}

/** Every tile on the page by its name, as it is read: the figure, the unit after it, the words under it. */
function tilesOf(page: Page): Promise<Record<string, Tile>> {
  return page.evaluate(() => {
    const text = (element: Element | null | undefined) => (element?.textContent ?? '').replace(/\s+/g, ' ').trim();
    return Object.fromEntries(
      [...document.querySelectorAll('[role="group"][aria-label]')].flatMap((group) => {
        const value = group.querySelector('[data-room]');
        if (!value) return [];
        const unit = value.nextElementSibling;
        const note = value.parentElement?.nextElementSibling;
        return [[group.getAttribute('aria-label')!, { value: text(value), unit: text(unit), note: text(note) }]];
      }),
    );
  });
}

function expectTile(tiles: Record<string, Tile>, said: Saying, where: string) {
  const tile = tiles[said.name];
  expect.soft(tile && [tile.value, tile.unit], `${said.name} ${where}`).toEqual([said.value, said.unit]);
  expect.soft(tile?.note.startsWith(said.note), `under ${said.name} ${where}: ${tile?.note}`).toBe(true);
}

/** The cells of a table, row by row, as they are read. */
function rowsOf(page: Page, within: string): Promise<string[][]> {
  return page.evaluate(
    (selector) =>
      [...document.querySelectorAll(`${selector} tbody tr`)].map((row) =>
        [...row.querySelectorAll('th, td')].map((cell) => {
          const copy = cell.cloneNode(true) as Element;
          // Buttons that ask why belong to a cell and are no part of its figure.
          for (const extra of copy.querySelectorAll('button, [role="dialog"]')) extra.remove();
          return (copy.textContent ?? '').replace(/\s+/g, ' ').trim();
        }),
      ),
    within,
  );
}

const CASES = Object.entries(DIVES).flatMap(([name, dive]) =>
  (['metric', 'imperial'] as const).map((units) => [name, units, dive] as const),
);

describe.each(CASES)('of the dive %s in %s units', (dive, units: UnitSystem, { script, instantsS }) => {
  // Each surface is held to the table in every run; the other dive and the other units take turns.
  const turn = { tags: dive === 'with stops' && units === 'metric' ? ['every-run'] : [] };
  const scene = sceneOfScript(script);
  const samples = instantsS.map((timeS) => sampleAt(scene.timeline, timeS));

  it('the readings and the presenter’s say what the table says', turn, async () => {
    const { page, complaints } = await visit({ preferences: { units }, viewport: { width: 1440, height: 900 } });
    await openDive(page, script, ['profile', 'no-stop']);
    await page.getByRole('button', { name: 'Readings', exact: true }).click();
    await page.getByRole('group', { name: 'Time to surface' }).waitFor();
    const watch = watchesOf(scene)[0]!;
    for (const presenting of [false, true]) {
      if (presenting) await page.getByRole('button', { name: 'Present' }).click();
      for (const [index, sample] of samples.entries()) {
        if (presenting) continue;
        await goTo(page, instantsS[index]!);
        const where = `at ${instantsS[index]} s`;
        const tiles = await tilesOf(page);
        const moment = modelAt(scene, sample);
        const said = modelSayings(moment, units);
        for (const id of PANEL) expectTile(tiles, said[id], where);
        const shown = shownAt(watch, sample, units);
        const unit = unitSayings(shown, units);
        if (shown.rateMMin !== null) expectTile(tiles, unit.rate, where);
        if (shown.safetyStop) expectTile(tiles, unit['safety-stop'], where);
        if (shown.noFlyH !== null) expectTile(tiles, unit['no-fly'], where);
        expect
          .soft(await page.getByRole('figure', { name: 'No-stop time' }).innerText(), where)
          .toContain(sayStanding(standingOf(moment), units));
      }
      if (presenting) {
        const tiles = await tilesOf(page);
        const said = modelSayings(modelAt(scene, samples.at(-1)!), units);
        for (const id of PANEL) if (tiles[said[id].name]) expectTile(tiles, said[id], 'presented');
        expect(Object.keys(tiles)).toContain('No-stop time');
      }
    }
    expect(complaints).toEqual([]);
  });

  it('the table of units and what the unit tells say what the table says, in order of time', turn, async () => {
    const { page } = await visit({ preferences: { units }, viewport: { width: 1440, height: 900 } });
    await openDive(page, script, ['units', 'log']);
    const watches = watchesOf(scene);
    await page.locator('[aria-label="What each unit shows now"]').waitFor();
    for (const [index, sample] of samples.entries()) {
      await goTo(page, instantsS[index]!);
      const said = watches.map((watch) => unitSayings(shownAt(watch, sample, units), units));
      const rows = Object.entries(said[0]!).map(([id, { name }]) => ({
        name,
        cells: said.map((one) => one[id as keyof typeof one].text),
      }));
      const isAlike = ({ cells }: (typeof rows)[number]) =>
        cells.length > 1 && cells.every((cell) => cell === cells[0]);
      const where = `at ${instantsS[index]} s`;
      expect
        .soft(await rowsOf(page, '[aria-label="What each unit shows now"]'), where)
        .toEqual(
          rows
            .filter((row) => !isAlike(row))
            .map(({ name, cells }) => [name, ...cells.map((cell) => (cell === cells[0] ? cell : `≠ ${cell}`))]),
        );
      // What they all show alike is folded away, and says the same.
      const folded = page.getByRole('figure', { name: 'Units side by side' }).locator('details dl > div');
      expect
        .soft(
          await folded.evaluateAll((all) => all.map((one) => [...one.children].map((part) => part.textContent))),
          where,
        )
        .toEqual(rows.filter(isAlike).map(({ name, cells: [cell] }) => [name, cell]));
    }
    const told = await page
      .getByRole('figure', { name: 'What the unit tells' })
      .getByRole('listitem')
      .evaluateAll((all) =>
        // What asks how it could have been avoided comes after it.
        all.map((item) => item.querySelector('button')?.textContent ?? ''),
      );
    const events = [...watches[0]!.events].sort((one, other) => one.timeS - other.timeS);
    expect(told.length).toBeGreaterThan(2);
    expect(told.map((text) => text.trim())).toEqual(events.map((event) => eventText(event, units)));
  });

  it('the printed sheet says what the table says, to the last row', turn, async () => {
    const { page } = await visit({ preferences: { units } });
    await openDive(page, script, ['profile']);
    await goTo(page, instantsS[2]);
    await page.emulateMedia({ media: 'print' });
    await page.getByRole('article', { name: 'Printed sheet' }).waitFor();
    const expected = printedSamples(scene.timeline, 'points', instantsS[2]).map((sample) => {
      const said = modelSayings(modelAt(scene, sample), units);
      return PRINTED.map((id) => said[id].text);
    });
    expect(expected.at(-1)![0]).toBe(printClock(scene.timeline.timeS.at(-1)!));
    expect(await rowsOf(page, '[aria-label="Printed sheet"]')).toEqual(expected);
  });

  it('the table behind the dive says what the table says', turn, async () => {
    const { page } = await visit({ preferences: { units }, viewport: { width: 1440, height: 900 } });
    await openDive(page, script, ['profile']);
    const { timeline } = scene;
    const figure = page.getByRole('figure', { name: 'The dive', exact: true });
    await openTools(page, 'The dive');
    await figure.getByRole('button', { name: /^Table of / }).click();
    await figure.locator('tbody tr').first().waitFor();
    const rows = await figure
      .locator('tbody tr')
      .evaluateAll((all) =>
        all.map((row) => [...row.querySelectorAll('th, td')].map((cell) => (cell.textContent ?? '').trim())),
      );
    expect(rows.length).toBeGreaterThan(10);
    const expected = rows.map(([time = ''], row) => {
      const [minutes, seconds] = time.split(':').map(Number);
      // The last row is the end of the dive, which may lie within its second.
      const sample = row === rows.length - 1 ? timeline.length - 1 : sampleAt(timeline, minutes! * 60 + seconds!);
      const said = modelSayings(modelAt(scene, sample), units);
      const leader = leadingCompartment(scene, sample);
      return [time, said.depth.text, said.ceiling.text, said['no-stop'].text, said['required-stop'].text, `${leader}`];
    });
    expect(rows.map((row) => row.slice(0, 6))).toEqual(expected);
    const events = [...watchesOf(scene)[0]!.events].sort((one, other) => one.timeS - other.timeS);
    const told = rows.map((row) => row[6]).filter((text) => text !== '');
    expect(told.join(' ')).toBe(events.map((event) => eventText(event, units)).join(' '));
  });
});
