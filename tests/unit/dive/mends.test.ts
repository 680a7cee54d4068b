import { describe, expect, it } from 'vitest';
import { setStepDepth, setStepRate } from '@/lib/dive/edit/edit-steps';
import { mended } from '@/lib/dive/script/mend';
import { parseScript } from '@/lib/dive/script';
import { errorsOf } from '../read';

const around = (line: string) => `descend to 30 m at 18 m/min\n${line}\nascend to surface at 9 m/min`;

/** What each button of the first message makes of the script. */
const offered = (script: string) => errorsOf(script)[0]?.mends?.map((mend) => mended(script, mend)) ?? [];

describe('a mend that a message offers', () => {
  it.each([
    ['ascent to 20 m at 9 m/min', ['ascend to 20 m at 9 m/min']],
    ['surfce  interval 60 min', ['surface interval 60 min']],
    ['descend to 40 at 18 m/min', ['descend to 40 m at 18 m/min', 'descend to 130 ft at 18 m/min']],
    ['descend to 40 m at 18', ['descend to 40 m at 18 m/min', 'descend to 40 m at 59 ft/min']],
    ['descend to 40 m at 2 min', ['descend to 40 m in 2 min']],
    ['descend to 40 m in 18 m/min', ['descend to 40 m at 18 m/min']],
    ['descend at 18 m/min', ['descend to 30 m at 18 m/min', 'descend to 100 ft at 18 m/min']],
    ['descend to 40 m for 2 min', ['descend to 40 m in 2 min', 'descend to 40 m\nstay 2 min']],
    ['descend to 40 m at 300 m/min', ['descend to 40 m at 200 m/min']],
    ['descend to 40 m in 1 s', ['descend to 40 m in 3 s']],
    ['descend to 20 m at 18 m/min', ['ascend to 20 m at 18 m/min']],
    ['stay', ['stay 20 min']],
    ['stay 20', ['stay 20 min', 'stay 20 s']],
    ['stay 3 m', ['stay 3 min']],
    ['stay at 30 m for 3 min # rest', ['stay 3 min # rest']],
    ['stay at 7 min', ['stay 7 min']],
    ['stay at 30 m', ['stay 3 min']],
    ['switch to 32', ['switch to 32%']],
    ['interval 60 min', ['ascend to surface at 9 m/min\ninterval 60 min']],
  ])('writes it: %s', (line, wanted) => {
    expect(offered(around(line))).toEqual(wanted.map(around));
  });

  it('is made piece by piece, those at one place in the order given; a line that is not there is left alone', () => {
    const piece = (line: number, column: number, endColumn: number, text: string) => ({
      line,
      column,
      endColumn,
      text,
    });
    const edits = [
      piece(2, 2, 3, 'X'),
      piece(2, 1, 1, '<'),
      piece(2, 1, 1, '-'),
      { line: 1, remove: true as const },
      piece(3, 4, 4, '!'),
      piece(9, 1, 1, '?'),
    ];
    expect(mended('abc\ndef\nghi', { label: '', edits })).toBe('<-dXf\nghi!');
  });

  it('moves a setting to where it belongs, or changes the gas on the spot', () => {
    expect(offered(around('gas: 50%'))).toEqual([
      'gas: 50%\ndescend to 30 m at 18 m/min\nascend to surface at 9 m/min',
      around('switch to 50%'),
    ]);
  });

  it('takes either of two lines out that say the same', () => {
    expect(offered('water: salt\nwater: fresh')).toEqual(['water: fresh', 'water: salt']);
  });

  it('brings the diver up, in round feet where the script is in feet', () => {
    expect(offered('descend to 100 ft\nstay 5 min # then up')).toEqual([
      'descend to 100 ft\nstay 5 min # then up\nascend to surface at 30 ft/min',
    ]);
  });

  it('is told once of lines that are wrong in one way, and mends them all', () => {
    const script = 'descent to 30 m\nascent to 20 m\nstay 5 min\nascent to 5 m\nascent to surface';
    const errors = errorsOf(script);
    expect(errors.map(({ line, alsoOn }) => [line, alsoOn])).toEqual([
      [1, undefined],
      [2, [4, 5]],
    ]);
    const upMended = mended(script, errors[1]!.mends![0]!);
    expect(upMended).toBe('descent to 30 m\nascend to 20 m\nstay 5 min\nascend to 5 m\nascend to surface');
    const all = mended(upMended, errorsOf(upMended)[0]!.mends![0]!);
    expect(parseScript(all).ok).toBe(true);
  });

  it('keeps the order of settings that are moved together', () => {
    const script = 'descend to 9 m\nwater: salt\nwater: salt\nascend to surface';
    const late = errorsOf(script)[0]!;
    expect(late.alsoOn).toEqual([3]);
    expect(
      mended('stay 1 min\ncarry: 50%\ncarry: oxygen', errorsOf('stay 1 min\ncarry: 50%\ncarry: oxygen')[0]!.mends![0]!),
    ).toBe('carry: 50%\ncarry: oxygen\nstay 1 min');
  });

  it.each(
    ['desend to 40 m', 'descend to 40 at 18', 'stay 0 min', 'stay -3 min', 'stay 2:5', 'descend to 1,200 m', 'gas: 50']
      .map((line) => [around(line)])
      .concat([
        ['gradient factors: 85/30'],
        ['water: slat'],
        ['water:'],
        ['gradient factors: 85'],
        ['altitude: 1,500 m'],
      ]),
  )('takes its own error away: %j', (script) => {
    for (const error of errorsOf(script))
      for (const mend of error.mends ?? [])
        expect(errorsOf(mended(script, mend)).map(({ message }) => message)).not.toContain(error.message);
  });
});

describe('a step without a rate', () => {
  const silent = 'descend to 30 m\nstay 5 min\nascend to 5 m\nascend to surface in 1 min';

  it('goes at the plan’s rate, which is 18 m/min down and 9 m/min up unless it is set', () => {
    const durations = (script: string) => {
      const parsed = parseScript(script);
      return parsed.ok && parsed.dive.steps.map((step) => 'durationS' in step && Math.round(step.durationS));
    };
    expect(durations(silent)).toEqual([100, 300, 167, 60]);
    expect(durations(`ascent rate: 10 m/min\ndescent rate: 20 m/min\n${silent}`)).toEqual([90, 300, 150, 60]);
  });

  it('is told of in one note, which can write the rates out without changing the dive', () => {
    const parsed = parseScript(silent);
    expect(parsed.ok && parsed.warnings).toMatchObject([
      {
        line: 1,
        alsoOn: [3],
        message: 'A step that gives no rate goes at the plan’s: down at 18 m/min, up at 9 m/min.',
      },
    ]);
    const written = mended(silent, parsed.warnings[0]!.mends![0]!);
    expect(written).toBe(
      'descend to 30 m at 18 m/min\nstay 5 min\nascend to 5 m at 9 m/min\nascend to surface in 1 min',
    );
    const again = parseScript(written);
    expect(again.ok && parsed.ok && again.dive.steps).toEqual(parsed.ok && parsed.dive.steps);
    expect(again.warnings).toEqual([]);
  });

  it('keeps its silence where a drag moves its depth, and speaks where one sets its rate', () => {
    expect(setStepDepth(silent, 0, 28)).toBe(silent.replace('30 m', '28 m'));
    expect(setStepRate(silent, 2, 6)).toBe(silent.replace('to 5 m', 'to 5 m at 6 m/min'));
  });
});
