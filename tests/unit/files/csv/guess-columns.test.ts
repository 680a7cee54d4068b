import { describe, expect, it } from 'vitest';
import { answerQuestion, guessColumns, type Guess } from '@/lib/files/csv/guess-columns';

function guessed(text: string): Guess {
  const guess = guessColumns(text, true);
  if (!guess.ok) throw new Error(guess.what);
  return guess;
}

const used = (guess: Guess) =>
  guess.mapping.columns.map(({ role, unit }) => (role === 'ignored' ? '–' : `${role} ${unit}`));

describe('guessing the columns of a CSV file', () => {
  it('asks nothing where the headings tell all', () => {
    const guess = guessed('time_s,depth_m\n0,0.0\n10,1.5\n20,3.0\n');
    expect(used(guess)).toEqual(['time s', 'depth m']);
    expect(guess.questions).toEqual([]);
    expect(guess.mapping).toMatchObject({ separator: ',', decimal: '.', firstRow: 2 });
  });

  it.each([
    [
      'German, semicolons and decimal commas',
      'Zeit (s);Tiefe (m)\n0;0,0\n10;1,5\n20;3,2\n',
      ['time s', 'depth m'],
      ';',
      ',',
    ],
    ['French, tabs', 'Temps (min)\tProfondeur (m)\n0\t0,0\n0,5\t4,5\n1\t9,2\n', ['time min', 'depth m'], '\t', ','],
    [
      'Spanish',
      'Tiempo [s],Profundidad [m],Temperatura [°C]\n0,0.0,18\n10,1.5,18\n',
      ['time s', 'depth m', 'temperature °C'],
      ',',
      '.',
    ],
    ['Italian with an accent', 'Tempo (s);Profondità (m)\n0;0,0\n4;0,8\n', ['time s', 'depth m'], ';', ','],
    ['Dutch', 'Tijd (s)|Diepte (m)\n0|0.0\n4|0.8\n', ['time s', 'depth m'], '|', '.'],
    ['feet', 'Elapsed Time (sec),Depth (ft)\n0,0\n10,5\n', ['time s', 'depth ft'], ',', '.'],
    [
      'columns of any order, with others between',
      'No,Depth/m,Note,Time/s\n1,0.0,x,0\n2,1.5,y,10\n',
      ['–', 'depth m', '–', 'time s'],
      ',',
      '.',
    ],
    ['spaces', 'time_s   depth_m\n0        0.0\n10       1.5\n', ['time s', 'depth m'], ' ', '.'],
    ['an unusual separator', 'time_s#depth_m\n0#0.0\n10#1.5\n20#3.0\n', ['time s', 'depth m'], '#', '.'],
    ['a clock', 'Time (h:mm:ss),Depth (m)\n0:00:00,0.0\n0:00:10,1.5\n', ['time h:mm:ss', 'depth m'], ',', '.'],
    ['dates', 'Time,Depth (m)\n2026-05-01 10:00:00,0.0\n2026-05-01 10:00:10,1.5\n', ['time date', 'depth m'], ',', '.'],
    ['a row of units', 'time,depth\ns,m\n0,0.0\n10,1.5\n', ['time s', 'depth m'], ',', '.'],
    [
      'the figures of a unit',
      'dive,time_s,depth_m,gas,no_stop_time_min,ceiling_m,stop_depth_m,stop_time_min\n1,0,0.0,air,99,0,,\n1,10,1.5,air,99,0,,\n',
      ['dive none', 'time s', 'depth m', 'gas none', 'noStop min', 'ceiling m', 'stopDepth m', 'stopTime min'],
      ',',
      '.',
    ],
    [
      'gases in columns of their own',
      'time_s,depth_m,O2 (%),He (%)\n0,0.0,21,35\n10,1.5,21,35\n',
      ['time s', 'depth m', 'oxygen %', 'helium %'],
      ',',
      '.',
    ],
  ])('understands %s', (_, text, columns, separator, decimal) => {
    const guess = guessed(text);
    expect(used(guess)).toEqual(columns);
    expect(guess.mapping).toMatchObject({ separator, decimal });
    expect(guess.questions).toEqual([]);
  });

  it('passes over remarks and a preamble to the first row of samples', () => {
    const guess = guessed('"# a caution, in a cell"\nInvented logger\n\ntime_s;depth_m\n0;0,0\n10;1,5\n20;3,1\n');
    expect(guess.mapping.firstRow).toBe(5);
    expect(used(guess)).toEqual(['time s', 'depth m']);
  });

  it('asks for a unit that no heading names, and says why', () => {
    const guess = guessed('time,depth\n0,0.0\n10,1.5\n20,3.0\n');
    expect(guess.questions.map(({ id }) => id)).toEqual(['unit:0', 'unit:1']);
    expect(guess.questions[1]).toMatchObject({
      ask: 'What is “depth” in?',
      why: 'Its heading names no unit.',
      guess: 'm',
    });
    expect(guess.questions[1]!.choices.map(({ value }) => value)).toEqual(['m', 'ft', 'cm']);
    expect(answerQuestion(guess.mapping, guess.questions[1]!, 'ft').columns[1]).toEqual({ role: 'depth', unit: 'ft' });
  });

  it('lets a ceiling without a unit of its own follow the answer for the depth', () => {
    const guess = guessed('time_s,depth,ceiling\n0,0.0,0\n10,1.5,0\n');
    const question = guess.questions.find(({ ask }) => ask.includes('depth'))!;
    expect(answerQuestion(guess.mapping, question, 'ft').columns.map(({ unit }) => unit)).toEqual(['s', 'ft', 'ft']);
    expect(guess.questions).toHaveLength(1);
  });

  it('takes metres for granted where the language of the headings measures in metres', () => {
    expect(guessed('Zeit (s);Tiefe\n0;0,0\n10;1,5\n').questions).toEqual([]);
  });

  it('asks which column is which where nothing names them, guessing from the numbers', () => {
    const guess = guessed('0,0.0\n10,1.5\n20,3.0\n30,1.0\n');
    expect(guess.questions.map(({ id }) => id)).toEqual(['column:time', 'column:depth', 'unit:0', 'unit:1']);
    expect(guess.questions[0]!.guess).toBe('0');
    const swapped = answerQuestion(guess.mapping, guess.questions[0]!, '1');
    expect(swapped.columns.map(({ role }) => role)).toEqual(['ignored', 'time']);
  });

  it('asks whether 2:50 is minutes or hours', () => {
    const guess = guessed('time,depth_m\n0:00,0.0\n0:10,1.5\n0:20,3.0\n');
    expect(guess.questions.map(({ id }) => id)).toEqual(['unit:0']);
    expect(guess.questions[0]!.choices.map(({ value }) => value)).toEqual(['m:ss', 'h:mm']);
  });

  it('asks for the decimal mark where 1,200 could be either', () => {
    const guess = guessed('time_s;depth_m\n0;1,200\n10;2,500\n');
    expect(guess.questions.map(({ id }) => id)).toEqual(['decimal']);
    expect(answerQuestion(guess.mapping, guess.questions[0]!, '.').decimal).toBe('.');
  });

  it('changes nothing for an answer that is no choice', () => {
    const guess = guessed('time,depth\n0,0.0\n10,1.5\n');
    expect(answerQuestion(guess.mapping, guess.questions[0]!, 'furlongs')).toEqual(guess.mapping);
  });

  it('refuses a comma that parts columns and marks decimals', () => {
    const guess = guessColumns('time_s,depth_m\n0,0,0\n10,1,5\n20,3,1\n', true);
    expect(guess).toMatchObject({ ok: false });
    expect(guess.ok ? '' : guess.what).toContain('row 2 has 3 cells for 2 headings');
  });

  it.each([
    ['', ''],
    ['hello', ': row 1 is “hello”'],
    ['one line of words\nand another', ': row 1 is “one line of words”'],
  ])('refuses %j, which has no rows of numbers, and says what it has', (text, says) => {
    const guess = guessColumns(text, true);
    expect(guess.ok ? '' : guess.what).toBe(`No rows of numbers were found in this file${says}.`);
  });
});
