import { describe, expect, it } from 'vitest';
import differences from '@/content/curves/no-stop-differences.json';
import overlays from '@/content/curves/no-stop-overlays.json';
import { differencesSchema, overlaysSchema } from '@/content/curves/schema';
import navy from '@/content/published/no-stop-us-navy.json';
import water from '@/content/published/water.json';
import { curveSite, rested } from '@/lib/curves/curve-site';
import { noStopCurve } from '@/lib/curves/no-stop-curve';
import { PUBLISHED_TABLES } from '@/lib/curves/published-no-stop';
import { whyTheyDiffer } from '@/lib/curves/table-differences';
import { AIR } from '@/lib/physics/gas';
import { BAR_PER_FSW } from '@/lib/physics/water';
import { settingsWith } from './scripted';

const tableNamed = (id: string) => PUBLISHED_TABLES.find((table) => table.id === id)!;

describe('published tables to lay over a curve', () => {
  it('keep to their schema', () => {
    expect(overlaysSchema.safeParse(overlays).error?.issues ?? []).toEqual([]);
    expect(differencesSchema.safeParse(differences).error?.issues ?? []).toEqual([]);
    expect(differences.map(({ id }) => id)).toEqual(overlays.map(({ id }) => id));
  });

  it('have depths by the published foot of sea water', () => expect(BAR_PER_FSW * 1e5).toBeCloseTo(water.fsw.pa, 6));

  it('have every row of the data, with fsw turned to metres of reference water', () => {
    const { rows } = tableNamed('navy-revision-4');
    expect(rows).toHaveLength(navy.revision4.length);
    // 100 fsw are 306,430 Pa by the navy’s unit: 30.64 m at 10 m to the bar.
    expect(rows.find(({ printed }) => printed === '100 fsw')).toEqual({
      depthM: expect.closeTo(30.64, 2),
      minutes: 25,
      printed: '100 fsw',
      obtained: 'read',
    });
    expect(tableNamed('table-1986').rows.find(({ depthM }) => depthM === 30)!.minutes).toBe(17);
  });

  it.each(PUBLISHED_TABLES)('$name never allows longer deeper', ({ rows }) => {
    rows.forEach((row, i) => i > 0 && expect(row.minutes).toBeLessThanOrEqual(rows[i - 1]!.minutes));
  });
});

describe('why a row differs', () => {
  const table = tableNamed('navy-revision-7');
  const row = table.rows.find(({ printed }) => printed === '100 fsw')!;
  const steps = whyTheyDiffer(table, row, 0.85);

  it('goes from the model’s own time to the table’s, step by step, leaving nothing over', () => {
    expect(steps.map(({ id }) => id)).toEqual(['model', 'descent', 'whole-minutes', 'remainder']);
    expect(steps.at(-1)!.minutes).toBe(row.minutes);
    expect(steps[0]!.minutes + steps.reduce((sum, { changeMin }) => sum + changeMin, 0)).toBeCloseTo(row.minutes, 9);
    for (const { why } of steps) expect(why.length).toBeGreaterThan(0);
  });

  it('begins with the engine’s curve at the table’s altitude', () => {
    const settings = settingsWith({ altitudeM: 700, start: { kind: 'adapted', altitudeM: 700 } });
    const own = noStopCurve({ site: curveSite(settings), tissues: rested(settings), gas: AIR, gf: 1 }, [30]).minutes[0];
    const table1986 = tableNamed('table-1986');
    expect(
      whyTheyDiffer(
        table1986,
        table1986.rows.find(({ depthM }) => depthM === 30)!,
        1,
      )[0]!.minutes,
    ).toBe(own);
  });

  it('counts the way down in, which lengthens the time by less than the way takes', () => {
    const descent = steps[1]!.changeMin;
    expect(descent).toBeGreaterThan(0);
    expect(descent).toBeLessThan(row.depthM / table.descentMMin);
  });

  it('cuts to whole minutes', () => expect(steps[2]!.minutes).toBe(Math.floor(steps[1]!.minutes)));

  it('has no change where both times are without end', () => {
    const shallow = whyTheyDiffer(table, { ...row, depthM: 3 }, 0.85);
    expect(shallow[1]).toMatchObject({ minutes: Infinity, changeMin: 0 });
  });
});
