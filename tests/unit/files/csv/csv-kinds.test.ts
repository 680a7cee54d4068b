import { describe, expect, it } from 'vitest';
import { answerQuestion, guessColumns } from '@/lib/files/csv/guess-columns';
import { readCsv } from '@/lib/files/csv/read-csv';
import { diveFromRecords } from '@/lib/files/records/dive-from-record';

/** Reads a file as its guesses say, with answers by the words a question begins with. Invented files, of shapes people's exports have. */
async function opened(text: string, answers: Readonly<Record<string, string>> = {}) {
  const guess = guessColumns(text, true);
  if (!guess.ok) throw new Error(guess.what);
  let { mapping } = guess;
  for (const question of guess.questions) {
    const given = Object.entries(answers).find(([ask]) => question.ask.startsWith(ask));
    mapping = answerQuestion(mapping, question, given?.[1] ?? question.guess);
  }
  const read = await readCsv([text], mapping);
  if (!read.ok) throw new Error(read.what);
  const [first] = read.recordings;
  return {
    ...read,
    asked: guess.questions.map(({ ask }) => ask),
    timeS: [...first!.timeS],
    depthM: [...first!.depthM],
    first: first!,
  };
}

describe('shapes of CSV files', () => {
  it('take the time that goes on, where another column of that name stands still', async () => {
    const { timeS, asked } = await opened(
      'Time,Sample time (min),Depth (m)\n10:15,0,0\n10:15,0.5,5\n10:15,1,9\n10:15,1.5,12\n',
    );
    expect(timeS).toEqual([0, 30, 60, 90]);
    expect(asked).toEqual([]);
  });

  it('read dates with strokes, and ask which of day and month comes first', async () => {
    const text = 'Time,Depth (m)\n01/05/2024 10:00:10,0\n01/05/2024 10:00:20,1.5\n02/05/2024 10:00:10,3\n';
    const asked = await opened(text);
    expect(asked.asked).toEqual(['What is “Time” in?']);
    expect(asked.timeS).toEqual([0, 10, 86_400]);
    const month = await opened(text, { 'What is “Time”': 'date, month first' });
    expect(month.timeS).toEqual([0, 10, 31 * 86_400]);
    expect((await opened('Time,Depth (m)\n31/05/2024 10:00,0\n31/05/2024 10:01,9\n')).asked).toEqual([]);
  });

  it('read a clock of twelve hours', async () => {
    const { timeS, asked } = await opened(
      'Time,Depth (m)\n5/1/2024 11:59:50 AM,0\n5/1/2024 12:00:10 PM,3\n5/1/2024 1:00:00 PM,5\n',
    );
    expect(timeS).toEqual([0, 20, 3610]);
    expect(asked).toHaveLength(1);
    expect((await opened('Time,Depth (m)\n5/21/2024 12:01 AM,0\n5/21/2024 12:02 AM,3\n')).timeS).toEqual([0, 60]);
  });

  it('read decimal commas in quotation marks between commas', async () => {
    const { depthM, asked } = await opened('time_s,depth_m\n0,"0,0"\n10,"1,5"\n20,"12,25"\n');
    expect(depthM).toEqual([0, 1.5, 12.25]);
    expect(asked).toEqual([]);
  });

  it('read thousands of seconds with their comma', async () => {
    const { timeS, asked } = await opened('time_s,depth_m\n990,10.5\n"1,000",10.0\n"1,010",0.0\n');
    expect([timeS[1]! - timeS[0]!, timeS[2]! - timeS[1]!]).toEqual([10, 10]);
    expect(asked).toEqual([]);
  });

  it('turn depths that are negative throughout, and say so', async () => {
    const { depthM, notes } = await opened('time_s,depth_m\n0,0\n60,-18\n600,-18.5\n700,0\n');
    expect(depthM).toEqual([0, 18, 18.5, 0]);
    expect(notes.join()).toMatch(/depths as negative numbers throughout/);
    const noise = await opened('time_s,depth_m\n0,-0.1\n60,18\n600,18\n700,-0.2\n');
    expect(noise.depthM[0]).toBe(-0.1);
  });

  it('go by a first line that names the separator', async () => {
    const { timeS, depthM } = await opened('sep=;\ntime_s;depth_m\n0;0,0\n10;1,5\n20;3,0\n');
    expect([timeS, depthM]).toEqual([
      [0, 10, 20],
      [0, 1.5, 3],
    ]);
  });

  it('know a stop by its name in another language', async () => {
    const { first } = await opened('Temps (min);Profondeur (m);Palier (m)\n0;0;0\n1;40;0\n20;40;6\n30;6;6\n40;0;0\n');
    expect([...first.unit.stopDepthM!]).toEqual([0, 0, 6, 6, 0]);
  });

  it('take the gas from a line above the samples, and say from which', async () => {
    const { first } = await opened('Logger:,invented\nGas:,EAN32\n\ntime_s,depth_m\n0,0\n60,18\n600,18\n700,0\n');
    expect(first.switches).toEqual([{ timeS: 0, gas: { o2: 0.32, he: 0 } }]);
    const made = diveFromRecords([first]);
    expect(made.ok && made.value.notes.join()).toMatch(/row 2 names 32%/);
  });

  it('read units that stand in the cells, and none of another unit', async () => {
    const { timeS, depthM } = await opened('Time,Depth\n0 s,0.0 m\n30 s,5.5 m\n60 s,9 m\n');
    expect([timeS, depthM]).toEqual([
      [0, 30, 60],
      [0, 5.5, 9],
    ]);
    const mixed = await opened(
      `time_s,depth_m\n${Array.from({ length: 20 }, (_, i) => `${i},${i === 12 ? '9 ft' : i}`).join('\n')}\n`,
    );
    expect(mixed.depthM[12]).toBeNaN();
  });

  it('take headings written as one word, and moments counted from 1970', async () => {
    const inOneWord = await opened('timeInSeconds,depthInMeters\n0,0\n60,5\n120,9\n');
    expect([inOneWord.timeS, inOneWord.asked]).toEqual([[0, 60, 120], []]);
    for (const unit of [1, 1000]) {
      const { timeS, asked } = await opened(
        `timestamp,depth_m\n${[0, 60, 120].map((s) => `${(1_714_557_600 + s) * unit},${s / 20}`).join('\n')}\n`,
      );
      expect([timeS, asked]).toEqual([[0, 60, 120], []]);
    }
  });

  it('do not take a pressure for a depth, and say of a unit that is not known which it is', () => {
    const guess = guessColumns('time_s,Pressure (mbar)\n0,1013\n60,1313\n120,1613\n', true);
    expect(guess).toMatchObject({ ok: true, columns: [{ role: 'time' }, { role: 'ignored' }] });
    const strange = guessColumns('time_s,Depth (dm)\n0,0\n60,30\n120,60\n', true);
    expect(strange).toMatchObject({
      questions: [
        { ask: 'What is “Depth (dm)” in?', why: 'Its heading says “dm”, which is no unit of depth that is read here.' },
      ],
    });
  });

  it.each([
    ['{"samples":[{"t":0,"d":0}]}', /^This looks like JSON/],
    [
      'Interval: 10 s\nDepth (m)\n0\n5\n9\n12\n',
      /^Each row holds one number alone, such as “0” in row 3: no time goes with a depth\.$/,
    ],
    ['Time,Depth\n0m30s,0\n1m30s,5\n', /^No rows of numbers were found in this file: row 3 is “1m30s,5”\.$/],
  ])('are refused where they hold no rows of samples, with what they hold: %j', (text, what) => {
    expect(guessColumns(text, true)).toMatchObject({ ok: false, what: expect.stringMatching(what) });
  });

  it('know a list of dives, one to a row, for what it is', () => {
    for (const text of [
      'No,Date,Max depth (m),Duration (min),Site\n1,2024-05-01,18.2,45,A reef\n2,2024-05-02,30.1,38,A wall\n',
      'Nummer;Datum;Max. Tiefe;Tauchzeit\n1;01.05.2024 10:00;18,2;45\n2;02.05.2024 10:00;30,1;38\n',
    ])
      expect(guessColumns(text, true)).toMatchObject({
        ok: false,
        what: expect.stringMatching(/This is a list of dives, one to a row \(row 2: /),
      });
  });

  it('know parts of a day, as spreadsheets keep times, and ask', async () => {
    const text = 'Time,Depth (m)\n0,0\n0.000115740740741,1.5\n0.000231481481481,3\n0.000347222222222,0\n';
    const { timeS, asked } = await opened(text);
    expect(timeS).toEqual([0, 10, 20, 30]);
    expect(asked).toEqual(['What is “Time” in?']);
    const serial = await opened('Time,Depth (m)\n45413.416666667,0\n45413.416782407,1.5\n45413.416898148,3\n');
    expect(serial.timeS.map((time) => Math.round(time))).toEqual([0, 10, 20]);
  });

  it('ask what a bare temperature is in where it could be either', async () => {
    const asked = async (degrees: number) =>
      (await opened(`time_s,depth_m,temp\n0,0,${degrees}\n10,5,${degrees}\n`)).asked.length;
    expect(await asked(30)).toBe(1);
    expect(await asked(18)).toBe(0);
    expect(await asked(64)).toBe(0);
  });
});

describe('the gas of a CSV file', () => {
  it('is understood in the words people’s exports use', async () => {
    const { first } = await opened(
      'time_s,depth_m,gas\n0,0,Nitrox 32\n60,18,Luft\n120,18,EANx50\n180,9,Tx 18/45\n240,6,Sauerstoff\n',
    );
    expect(first.switches.map(({ gas }) => [gas.o2, gas.he])).toEqual([
      [0.32, 0],
      [0.21, 0],
      [0.5, 0],
      [0.18, 0.45],
      [1, 0],
    ]);
  });

  it.each([
    ['O2 (%)', '0.32', 'What is “O2 (%)” in?', 0.32],
    ['gas', '32', 'Does “gas” hold the oxygen?', 0.32],
    ['gas', '0.32', 'Does “gas” hold the oxygen?', 0.32],
    ['Nitrox oxygen share', '32', 'Does “Nitrox oxygen share” hold the oxygen?', 0.32],
  ])('is asked about under the heading %j over %j', async (heading, cell, ask, o2) => {
    const { asked, first } = await opened(`time_s,depth_m,${heading}\n0,0,${cell}\n60,9,${cell}\n120,0,${cell}\n`);
    expect(asked).toEqual([ask]);
    expect(first.switches.map(({ gas }) => gas.o2)).toEqual([o2]);
  });

  it.each([
    'PO2 (bar)',
    'Oxygen partial pressure (bar)',
    'Oxygen toxicity (%)',
    'CNS O2 (%)',
    'Gas pressure (bar)',
    'Gas time (min)',
  ])('is not taken from a column of something else: %s', async (heading) => {
    const { first } = await opened(`time_s,depth_m,${heading}\n0,0,0.2\n60,9,0.4\n120,0,0.3\n`);
    expect(first.switches).toEqual([]);
  });

  it('is left open between several that lines above the samples name', async () => {
    const { first } = await opened('Gas 1: EAN32\nGas 2: EAN50\ntime_s,depth_m\n0,0\n60,9\n120,0\n');
    expect(first.firstGas).toEqual({
      from: 'No column tells when which gas was breathed; rows 1 and 2 name 32% and 50%.',
      possible: [
        { o2: 0.32, he: 0 },
        { o2: 0.5, he: 0 },
      ],
    });
  });

  it('does not silently stay what it was where a name is not understood', async () => {
    const { first } = await opened(
      'time_s,depth_m,gas\n0,0,Nitrox 32\n60,18,Mischung B\n600,18,Mischung B\n700,0,Mischung B\n',
    );
    expect(diveFromRecords([first])).toMatchObject({
      ok: false,
      what: expect.stringMatching(/Row 3: the gas “Mischung B” is not understood/),
    });
  });
});
