import { describe, expect, it } from 'vitest';
import { removeStep, setStepDepth, setStepDuration, setStepRate } from '@/lib/dive/edit/edit-steps';
import { setSetting } from '@/lib/dive/edit/edit-settings';
import { parseScript } from '@/lib/dive/script';
import { changed, TEXT } from './edited';

describe('moving the depth of a step', () => {
  it('changes the number and nothing else', () => {
    expect(changed(setStepDepth(TEXT, 0, 32))).toEqual(['descend to 32 m at 18 m/min # quick']);
    expect(changed(setStepDepth(TEXT, 0, 31.46))).toEqual(['descend to 31.5 m at 18 m/min # quick']);
  });

  it('keeps feet, decimal commas and spacing', () => {
    const feet = 'Descend to 100ft at 60 ft/min\nascend to 20 ft at 30 ft/min\nsurface at 30 ft/min';
    expect(changed(setStepDepth(feet, 0, 33.6), feet)).toEqual(['Descend to 110ft at 60 ft/min']);
    const comma = 'descend  to  30,5 m  at 18 m/min\nascend to 5 m at 9 m/min\nascend to surface at 9 m/min';
    expect(changed(setStepDepth(comma, 0, 31.2), comma)).toEqual(['descend  to  31,2 m  at 18 m/min']);
  });

  it('moves the change of depth that led to a stay', () => {
    expect(setStepDepth(TEXT, 1, 25)).toBe(setStepDepth(TEXT, 0, 25));
    expect(setStepDepth(TEXT, 3, 6)).toBe(setStepDepth(TEXT, 2, 6));
  });

  it('turns an ascent that would go down into a descent, and the next step where its way turns', () => {
    expect(changed(setStepDepth(TEXT, 2, 40))).toEqual(['descend to 40 m at 9 m/min  # slowly']);
    expect(changed(setStepDepth(TEXT, 0, 3))).toEqual([
      'descend to 3 m at 18 m/min # quick',
      'descend to 5 m at 9 m/min  # slowly',
    ]);
  });

  it('turns words in the writer’s manner', () => {
    const text = 'Go down to 30 m at 18 m/min\nGo up to 5 m at 9 m/min\nsurface at 9 m/min';
    expect(changed(setStepDepth(text, 1, 40), text)).toEqual(['Go down to 40 m at 9 m/min']);
  });

  it('stops a step short of leaving a change of depth with nothing to change', () => {
    expect(changed(setStepDepth(TEXT, 0, 5))).toEqual(['descend to 5.1 m at 18 m/min # quick']);
    expect(changed(setStepDepth(TEXT, 2, 30))).toEqual(['ascend to 29.9 m at 9 m/min  # slowly']);
    expect(changed(setStepDepth(TEXT, 0, 0))).toEqual([
      'descend to 0.1 m at 18 m/min # quick',
      'descend to 5 m at 9 m/min  # slowly',
    ]);
    const feet = TEXT.replace('30 m', '100 ft').replace('5 m', '15 ft');
    expect(setStepDepth(feet, 0, 15 * 0.3048)).toContain('descend to 16 ft');
  });

  it('stops on the side it comes from, near the surface and near the deepest depth too', () => {
    const shallow = 'descend to 3 m at 18 m/min\ndescend to 5 m at 18 m/min\nascend to surface at 9 m/min';
    expect(changed(setStepDepth(shallow, 0, 5), shallow)).toEqual(['descend to 4.9 m at 18 m/min']);
    const deep = 'descend to 348 m at 60 m/min\nascend to 345 m at 9 m/min\nascend to surface at 9 m/min';
    expect(changed(setStepDepth(deep, 0, 345), deep)).toEqual(['descend to 345.1 m at 60 m/min']);
    const deepest = deep.replace('345 m', '350 m').replace('ascend to 350', 'descend to 350');
    expect(changed(setStepDepth(deepest, 0, 350), deepest)).toEqual(['descend to 349.9 m at 60 m/min']);
  });

  it('loses nothing when dragged past the next depth and back', () => {
    let text = TEXT;
    for (const depth of [20, 10, 5, 4, 2, 0, 2, 5, 8, 20, 30]) text = setStepDepth(text, 0, depth);
    expect(text).toBe(TEXT);
  });

  it('leaves the end of a dive at the surface', () => {
    expect(setStepDepth(TEXT, 4, 10)).toBe(TEXT);
    const two = `${TEXT}\ninterval 60 min\n${TEXT}`;
    expect(setStepDepth(two, 4, 10)).toBe(two);
    expect(setStepDepth(two, 5, 10)).toBe(two);
    expect(setStepDepth(two, 6, 32).split('\n')[6]).toBe('descend to 32 m at 18 m/min # quick');
  });

  it('gives a depth to a visit to the surface', () => {
    const text =
      'descend to 20 m at 18 m/min\nSurface at 9 m/min # look around\ndescend to 10 m in 1 min\nascend to surface at 9 m/min';
    expect(changed(setStepDepth(text, 1, 4), text)).toEqual(['Ascend to 4 m at 9 m/min # look around']);
    const other = text.replace('Surface', 'ascend to the surface');
    expect(changed(setStepDepth(other, 1, 4), other)).toEqual(['ascend to 4 m at 9 m/min # look around']);
  });

  it('keeps within the depths of the model, and gives time to what would be too fast', () => {
    expect(changed(setStepDepth(TEXT, 0, 1e9))).toEqual(['descend to 350 m at 18 m/min # quick']);
    expect(changed(setStepDepth(TEXT, 2, 250))).toEqual([
      'descend to 250 m at 9 m/min  # slowly',
      'ascend to surface in 1 min 15 s',
    ]);
    expect(setStepDepth(TEXT, 0, NaN)).toBe(TEXT);
  });

  it('leaves a script it cannot read, and steps there are none of, alone', () => {
    const broken = `${TEXT}\nand then home`;
    expect(setStepDepth(broken, 0, 32)).toBe(broken);
    expect(setStepDepth(TEXT, 99, 32)).toBe(TEXT);
    expect(setStepDepth(TEXT, -1, 32)).toBe(TEXT);
  });

  it('takes the dive instead of the text', () => {
    const parsed = parseScript(TEXT);
    expect(parsed.ok && setStepDepth(parsed.dive, 0, 32)).toBe(setStepDepth(TEXT, 0, 32));
  });

  it('keeps the line ends of the text', () => {
    const windows = TEXT.replaceAll('\n', '\r\n');
    expect(setStepDepth(windows, 0, 32)).toBe(windows.replace('30 m', '32 m'));
  });
});

describe('changing how long a step takes', () => {
  it.each([
    ['20 min', 23 * 60, '23 min'],
    ['20 min', 23 * 60 + 30, '23 min 30 s'],
    ['20min', 90, '1min 30s'],
    ['20 minutes', 40, '40 s'],
    ['90 s', 120, '120 s'],
    ['2:50', 185, '3:05'],
    ['2:50', 6000, '100:00'],
    ['2 min 50 s', 185, '3 min 5 s'],
    ['1 h', 7200, '2 h'],
    ['1.5 h', 6300, '105 min'],
    ['2 days', 86400, '24 h'],
    ['20 min', 0.2, '1 s'],
  ])('writes %s as %i s: %s', (old, seconds, words) => {
    expect(setStepDuration(`stay ${old} # here`, 0, seconds)).toBe(`stay ${words} # here`);
  });

  it('changes the rate of a step that gives one, and the time of one that gives that', () => {
    expect(changed(setStepDuration(TEXT, 0, 120))).toEqual(['descend to 30 m at 15 m/min # quick']);
    expect(changed(setStepDuration(TEXT, 4, 90))).toEqual(['ascend to surface in 1 min 30 s']);
  });

  it('never asks for more than a script may', () => {
    expect(changed(setStepDuration(TEXT, 0, 0.5))).toEqual(['descend to 30 m at 200 m/min # quick']);
    expect(changed(setStepDuration(TEXT, 4, 0.5))).toEqual(['ascend to surface in 2 s']);
    for (const seconds of [0, -5, NaN, 1e12]) expect(setStepDuration(TEXT, 1, seconds)).toBe(TEXT);
    for (const seconds of [0, -5, NaN]) expect(setStepDuration(TEXT, 0, seconds)).toBe(TEXT);
    for (const rate of [0, -5, NaN]) expect(setStepRate(TEXT, 0, rate)).toBe(TEXT);
  });

  it('has nothing to change on a switch', () => {
    expect(setStepDuration('switch to 32%', 0, 60)).toBe('switch to 32%');
  });
});

describe('changing the rate of a step', () => {
  it.each([
    ['18 m/min', 9.04, '9 m/min'],
    ['18 m/min', 9.46, '9.5 m/min'],
    ['60 ft/min', 9, '30 ft/min'],
    ['0.3 m/s', 9, '0.15 m/s'],
    ['1 ft/s', 9, '0.5 ft/s'],
    ['18 m/min', 0.001, '0.1 m/min'],
    ['18 m/min', 999, '200 m/min'],
  ])('writes %s as %f m/min: %s', (old, rate, words) => {
    const text = `descend to 3 m at ${old}\nascend to surface at 9 m/min`;
    expect(setStepRate(text, 0, rate)).toBe(text.replace(old, words));
  });

  it('changes the time of a step that gives one', () => {
    const text = 'descend to 30 m in 2 min\nascend to surface at 9 m/min';
    expect(changed(setStepRate(text, 0, 18), text)).toEqual(['descend to 30 m in 1 min 40 s']);
  });

  it('leaves other steps alone', () => {
    expect(setStepRate(TEXT, 1, 9)).toBe(TEXT);
  });
});

describe('removing a step', () => {
  it('keeps the remark beside it', () => {
    expect(removeStep(TEXT, 0).split('\n').slice(0, 3)).toEqual([
      '# quick',
      'stay 20 min',
      'descend to 5 m at 9 m/min  # slowly',
    ]);
    expect(removeStep(TEXT, 2).split('\n')[2]).toBe('# slowly');
  });

  it('takes along what is left with nothing to change', () => {
    const text =
      'descend to 20 m at 18 m/min\ndescend to 30 m at 18 m/min\nascend to 20 m at 9 m/min\nascend to surface at 9 m/min';
    expect(removeStep(text, 1)).toBe('descend to 20 m at 18 m/min\nascend to surface at 9 m/min');
    expect(removeStep('descend to 20 m at 18 m/min\nstay 5 min\nascend to surface at 9 m/min', 0)).toBe('stay 5 min');
  });

  it('keeps the steps after what it takes along as they were', () => {
    const rest = 'ascend to 5 m at 9 m/min\ndescend to 12 m at 9 m/min\nascend to surface at 9 m/min';
    const text = `descend to 20 m at 18 m/min\ndescend to 30 m at 18 m/min\nascend to 20 m at 9 m/min\n${rest}`;
    expect(removeStep(text, 1)).toBe(`descend to 20 m at 18 m/min\n${rest}`);
  });

  it('leaves another dive alone, however shallow both are', () => {
    const shallow = 'descend to 1 m at 1 m/min\nstay 5 min\nascend to surface at 1 m/min';
    const day = `${shallow}\ninterval 60 min\n${shallow}`;
    expect(removeStep(day, 1)).toBe(day.replace('stay 5 min\n', ''));
  });

  it('does not strand the diver', () => {
    expect(removeStep(TEXT, 4)).toBe(TEXT);
    expect(removeStep(TEXT, 99)).toBe(TEXT);
  });
});

describe('changing a setting', () => {
  it('changes its value and keeps its name and remark', () => {
    expect(setSetting('GF = 85/85 # as the shop sets it\nstay 1 min', 'gradient factors', '30/85')).toBe(
      'GF = 30/85 # as the shop sets it\nstay 1 min',
    );
    expect(setSetting('water:', 'water', 'salt')).toBe('water: salt');
  });

  it('adds it after the other settings, or before the first step', () => {
    expect(setSetting('# a day\nwater: salt\n\nstay 1 min', 'gas', '32%')).toBe(
      '# a day\nwater: salt\ngas: 32%\n\nstay 1 min',
    );
    expect(setSetting('# a day\nstay 1 min', 'gas', '32%')).toBe('# a day\ngas: 32%\nstay 1 min');
    expect(setSetting('', 'gas', '32%')).toBe('gas: 32%\n');
  });

  it('takes the place of settings that say the same another way', () => {
    expect(setSetting('altitude: 1500 m\narrived from: 0 m, 2 h ago # by bus', 'adapted to', '0 m')).toBe(
      'altitude: 1500 m\nadapted to: 0 m\n# by bus',
    );
    expect(setSetting('carry: 50%\ncarry: oxygen', 'carry', '80%')).toBe('carry: 80%');
  });

  it('takes it out', () => {
    expect(setSetting('water: salt\ngas: 32% # rich\nstay 1 min', 'gas', undefined)).toBe(
      'water: salt\n# rich\nstay 1 min',
    );
  });

  it('writes a wrong value for the notices to show, and on one line whatever it is', () => {
    expect(setSetting('water: salt', 'water', 'lava\n# hot')).toBe('water: lava hot');
  });

  it('knows its settings', () => {
    expect(() => setSetting('', 'wetness', '1')).toThrow('No setting is called wetness.');
  });
});
