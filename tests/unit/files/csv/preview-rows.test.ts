import { describe, expect, it } from 'vitest';
import { guessColumns } from '@/lib/files/csv/guess-columns';
import { previewRows } from '@/lib/files/csv/preview-rows';

async function previewOf(text: string) {
  const guess = guessColumns(text, true);
  if (!guess.ok) throw new Error(guess.what);
  const preview = await previewRows(text, guess.mapping);
  if (!preview.ok) throw new Error(preview.what);
  return preview.rows;
}

describe('the first rows of a CSV file as they will be read', () => {
  const more = Array.from({ length: 60 }, (_, i) => `0:${String(i + 4).padStart(2, '0')},9 ft,32%\n`).join('');

  it('stand under their own rows of the file, each cell as written and as read', async () => {
    const text = `# a remark\nTime (m:ss),Depth (ft),Gas\n0:00,0,Luft\n\n0:01,10,Luft\n0:02,oops,Nitrox 32\n0:03,20,Mischung B\n${more}`;
    const rows = await previewOf(text);
    expect(rows.map(({ row }) => row)).toEqual([3, 5, 6, 7, 8, 9]);
    const air = { o2: 0.21, he: 0 };
    expect(rows.slice(0, 4).map(({ cells }) => cells)).toEqual([
      [
        { text: '0:00', read: 0 },
        { text: '0', read: 0 },
        { text: 'Luft', read: air },
      ],
      [
        { text: '0:01', read: 1 },
        { text: '10', read: 3.048 },
        { text: 'Luft', read: air },
      ],
      [
        { text: '0:02', read: 2 },
        { text: 'oops', read: undefined },
        { text: 'Nitrox 32', read: { o2: 0.32, he: 0 } },
      ],
      // A name that is not understood is not silently the gas before it.
      [
        { text: '0:03', read: 3 },
        { text: '20', read: 6.096 },
        { text: 'Mischung B', read: undefined },
      ],
    ]);
  });

  it('are of the dive each belongs to, and hold what a unit showed', async () => {
    const rows = await previewOf(
      'dive,time_s,depth_m,no_stop_time_min,temp_c\n1,0,0,99,18\n1,60,9,42,17\n2,0,0,99,16\n2,60,12,40,15\n',
    );
    expect(rows.map(({ cells }) => cells.map(({ read }) => read))).toEqual([
      ['Dive 1', 0, 0, 99 * 60, 18],
      ['Dive 1', 60, 9, 42 * 60, 17],
      ['Dive 2', 0, 0, 99 * 60, 16],
      ['Dive 2', 60, 12, 40 * 60, 15],
    ]);
  });

  it('are refused as the file would be where no column holds the depth', async () => {
    const guess = guessColumns('time_s,depth_m\n0,0\n60,9\n', true);
    if (!guess.ok) throw new Error(guess.what);
    const columns = [guess.mapping.columns[0]!, { role: 'ignored', unit: 'none' } as const];
    expect(await previewRows('time_s,depth_m\n0,0\n60,9\n', { ...guess.mapping, columns })).toMatchObject({
      ok: false,
      what: 'No column is marked as the depth.',
    });
  });
});
