import { describe, expect, it } from 'vitest';
import { diveSchema } from '@/lib/dive/dive';
import { parseScript, writeScript } from '@/lib/dive/script';
import { diveOf, errorIn } from '../read';

const EXAMPLE = `# comments are kept
water: reference
altitude: 0 m
gradient factors: 85/85
gas: air
descend to 30 m at 18 m/min
stay 20 min
switch to 50%
ascend to 5 m at 9 m/min
stay 3 min  # the safety stop
ascend to surface at 9 m/min
interval 60 min
`;

const settingsOf = (text: string) => diveOf(text).settings;
const stepsOf = (text: string) => diveOf(text).steps;

describe('a script', () => {
  it('means a dive', () => {
    const dive = diveOf(EXAMPLE);
    expect(dive.steps).toEqual([
      { kind: 'descend', toM: 30, durationS: 100 },
      { kind: 'stay', durationS: 1200 },
      { kind: 'switch', gas: { o2: 0.5, he: 0 } },
      { kind: 'ascend', toM: 5, durationS: 166.666666667 },
      { kind: 'stay', durationS: 180 },
      { kind: 'ascend', toM: 0, durationS: 33.333333333 },
      { kind: 'interval', durationS: 3600 },
    ]);
    expect(diveSchema.safeParse(dive).success).toBe(true);
  });

  it('comes back letter for letter, remarks and all', () => {
    expect(writeScript(diveOf(EXAMPLE))).toBe(EXAMPLE);
    const windows = EXAMPLE.replaceAll('\n', '\r\n');
    expect(writeScript(diveOf(windows))).toBe(windows);
  });

  it('is read once while it stays as it is', () => {
    expect(parseScript(EXAMPLE)).toBe(parseScript(EXAMPLE));
    expect(parseScript(`${EXAMPLE}\n`)).not.toBe(parseScript(EXAMPLE));
  });

  it('knows which step or setting each line stands for', () => {
    const stands = diveOf(EXAMPLE).lines.map((line) => line.stands);
    expect(stands[0]).toEqual({ as: 'remark' });
    expect(stands[3]).toEqual({ as: 'setting', name: 'gradient factors' });
    expect(stands[9]).toEqual({ as: 'step', index: 4 });
    expect(stands).toHaveLength(13);
  });

  it('counts a carriage return alone as a line end', () => {
    expect(stepsOf('stay 3 min\rstay 5 min')).toHaveLength(2);
  });

  it('may be empty', () => {
    expect(stepsOf('')).toEqual([]);
    expect(stepsOf('\n # nothing yet \n')).toEqual([]);
  });

  it('may end with an interval, to see how long the gas takes to leave', () => {
    expect(stepsOf('interval 24 h')).toEqual([{ kind: 'interval', durationS: 86400 }]);
  });
});

describe('the form of a script is forgiving', () => {
  const same = stepsOf(
    'descend to 30 m at 18 m/min\nstay 20 min\nswitch to 50%\nascend to surface at 9 m/min\ninterval 60 min',
  );
  it.each([
    'DESCEND to 30M at 18 M/MIN\nStay 20min\nSwitch To 50 %\nASCEND TO SURFACE AT 9 m/min\nSurface Interval 1 h',
    'go down to 30 m at 18 m/min\nhold 20 min\nbreathe nitrox 50\ngo up to the surface at 9 m/min\ninterval for 60 mins',
    'down 30 m, at 18 m/min\n\twait for 20:00\nswitch EAN50\nup to 0 m at 9 m/min\nsurface interval: 60 min',
    'descend at 18 m/min to 30 m\nstay: 20 min\nswitch = 50%\nsurface at 9 m/min\nsurface  interval 3600 s',
    'descend to 30 m at 18 m per minute\nremain 1200 secs\nchange to EANx 50\nrise to surface at 9 m/min\ninterval 60 min',
  ])('%j', (text) => {
    expect(stepsOf(text)).toEqual(same);
  });

  it('lets settings be written with = or nothing, and by their other names', () => {
    const settings = settingsOf('Water = sea\nelevation 1500 m\nGF: 30 / 85\nstarting gas = trimix 18/45');
    expect(settings).toMatchObject({
      water: 'salt',
      altitudeM: 1500,
      gradientFactors: { low: 0.3, high: 0.85 },
      gas: { o2: 0.18, he: 0.45 },
    });
  });

  it('takes feet wherever it takes metres', () => {
    expect(stepsOf('descend to 100 ft at 1 ft/s\nascend to surface in 2 min')).toEqual([
      { kind: 'descend', toM: 30.48, durationS: 100 },
      { kind: 'ascend', toM: 0, durationS: 120 },
    ]);
  });
});

describe('settings', () => {
  it('have their usual values when left out', () => {
    expect(settingsOf('')).toEqual({
      water: 'reference',
      altitudeM: 0,
      start: { kind: 'adapted', altitudeM: 0 },
      model: { variant: 'C', first: '1b', respiratoryQuotient: 1 },
      gradientFactors: { low: 0.85, high: 0.85 },
      gas: { o2: 0.21, he: 0 },
      carried: [],
      plan: { ascentMMin: 9, stopStepM: 3, lastStopM: 3, stopRoundingMin: 1 },
      setups: [],
    });
  });

  it('take the diver to be adapted to the site unless told', () => {
    expect(settingsOf('altitude: 1500 m').start).toEqual({ kind: 'adapted', altitudeM: 1500 });
    expect(settingsOf('adapted to: sea level\naltitude: 1500 m').start).toEqual({ kind: 'adapted', altitudeM: 0 });
    expect(settingsOf('altitude: 1500 m\narrived from: 0 m, 2 h ago').start).toEqual({
      kind: 'arrived',
      fromM: 0,
      agoS: 7200,
    });
    expect(settingsOf('arrived from sea level 90 min ago').start).toEqual({ kind: 'arrived', fromM: 0, agoS: 5400 });
  });

  it('choose the model', () => {
    expect(settingsOf('model: zhl16b\nfirst compartment: 1\nrespiratory quotient: 0,8').model).toEqual({
      variant: 'B',
      first: '1',
      respiratoryQuotient: 0.8,
    });
  });

  it('shape the plan', () => {
    expect(settingsOf('plan ascent: 10 m/min\nstop step: 10 ft\nlast stop: 6 m\nstop rounding: 30 s').plan).toEqual({
      ascentMMin: 10,
      stopStepM: 3.048,
      lastStopM: 6,
      stopRoundingMin: 0.5,
    });
  });

  it('carry gases, on one line or several', () => {
    const both = [
      { gas: { o2: 0.5, he: 0 }, fromM: 21 },
      { gas: { o2: 1, he: 0 }, fromM: 6 },
    ];
    expect(settingsOf('carry: 50% from 21 m, oxygen from 6 m').carried).toEqual(both);
    expect(settingsOf('carry: 50% from 21 m\ncarry: oxygen from 6 m').carried).toEqual(both);
    expect(settingsOf('carry: 50% from 21,5 m and oxygen').carried[0]!.fromM).toBe(21.5);
  });

  it('take a carried gas from its maximum operating depth at 1.6 bar, at a stop, when no depth is given', () => {
    // Common practice, no single source: 50 % from 21 m, oxygen from 6 m.
    expect(settingsOf('carry: 50%, oxygen').carried.map(({ fromM }) => fromM)).toEqual([21, 6]);
    // Water and stop step count wherever they are written.
    expect(settingsOf('carry: 50%\nstop step: 5 m').carried[0]!.fromM).toBe(20);
  });

  it('bring the tissues an earlier dive left', () => {
    const tensions = Array.from({ length: 16 }, (_, i) => 0.75 + i / 100);
    const start = settingsOf(`tissues: nitrogen ${tensions.join(' ')} bar`).start;
    expect(start).toEqual({ kind: 'tensions', nitrogenBar: tensions, heliumBar: Array(16).fill(0) });
    expect(errorIn('tissues: nitrogen 1 2 3 bar')!.message).toBe('There are 3 tensions of nitrogen, not 16.');
  });
});

describe('a dive made by a program', () => {
  it('is written in plain words', () => {
    const { settings, steps } = diveOf(EXAMPLE);
    expect(writeScript({ settings, steps, lines: [] })).toBe(
      EXAMPLE.split('\n').slice(1).join('\n').replace('  # the safety stop', ''),
    );
  });

  it('gives a time where no whole rate is exact', () => {
    const { settings } = diveOf('');
    const steps = [
      { kind: 'descend', toM: 31, durationS: 101 },
      { kind: 'ascend', toM: 0, durationS: 150.5 },
    ] as const;
    const text = writeScript({ settings, steps: [...steps], lines: [] });
    expect(text).toContain('descend to 31 m in 1 min 41 s\nascend to surface in 150.5 s\n');
    expect(stepsOf(text)).toEqual(steps);
  });

  it('keeps the remarks of lines that no longer say what it is', () => {
    const dive = diveOf(EXAMPLE);
    const changed = { ...dive, settings: { ...dive.settings, water: 'salt' as const } };
    const text = writeScript(changed);
    expect(text.split('\n').slice(0, 3)).toEqual(['# comments are kept', '# the safety stop', 'water: salt']);
    expect(settingsOf(text)).toEqual(changed.settings);
  });

  it('does not share its parts with other dives read from the same lines', () => {
    settingsOf('gradient factors: 30/85').gradientFactors.low = 0.1;
    stepsOf('switch to 50%')[0] = { kind: 'stay', durationS: 1 };
    expect(settingsOf('gradient factors: 30/85').gradientFactors.low).toBe(0.3);
    expect(settingsOf('gradient factors: 1/100').gradientFactors).toEqual({ low: 0.01, high: 1 });
  });
});
