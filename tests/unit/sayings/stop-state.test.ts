import { describe, expect, it } from 'vitest';
import {
  ceilingNote,
  noStopNote,
  requiredStopNote,
  sayLeft,
  sayStanding,
  sayStop,
  type Standing,
} from '@/lib/sayings/stop-state';

const FREE: Standing = {
  state: 'free',
  depthM: 18,
  ceilingM: 0,
  stop: undefined,
  noStopMin: 30.9,
  noStopLeader: 3,
  creditedNoStopMin: 33.5,
  ascentMMin: 9,
};
const CLEARING: Standing = { ...FREE, state: 'clearing', ceilingM: 0.41, noStopMin: 0, creditedNoStopMin: 1.9 };
const FILLING: Standing = {
  ...FREE,
  state: 'filling',
  depthM: 60,
  stop: { depthM: 3, minutes: 1 },
  noStopMin: 1.2,
  creditedNoStopMin: 0,
};
const OWED: Standing = {
  ...FREE,
  state: 'owed',
  depthM: 20,
  ceilingM: 4,
  stop: { depthM: 6, minutes: 2.4 },
  noStopMin: 0,
};
const ENDLESS = { depthM: 6, minutes: Infinity };

const said = (standing: Standing) => [
  sayStanding(standing, 'metric'),
  noStopNote(standing, 'metric'),
  ceilingNote(standing, 4),
  requiredStopNote(standing, 'metric'),
];

describe('how a diver stands, in words', () => {
  it('free', () => {
    expect(said(FREE)).toEqual([
      'Nothing is owed; you may stay 30 min here before you need a stop.',
      'compartment 3; 33 min with credit for the way up',
      'you may surface',
      'straight up is tolerated',
    ]);
  });

  it('free with a way up that takes up gas, with no credit worked out, and without end', () => {
    expect(noStopNote({ ...FREE, creditedNoStopMin: 28.2 }, 'metric')).toBe(
      'compartment 3; 28 min with the way up, still taking up gas',
    );
    expect(noStopNote({ ...FREE, creditedNoStopMin: FREE.noStopMin }, 'metric')).toMatch(/with credit for the way up$/);
    expect(noStopNote({ ...FREE, creditedNoStopMin: undefined }, 'metric')).toBe('compartment 3');
    const endless = { ...FREE, noStopMin: Infinity, noStopLeader: 0 };
    expect(sayStanding(endless, 'metric')).toBe('Nothing is owed, however long you stay here.');
    expect(noStopNote(endless, 'metric')).toBe('no compartment will reach its limit here');
  });

  it('clearing', () => {
    expect(said(CLEARING)).toEqual([
      'There is a ceiling at 0.5 m; coming up at 9 m/min it is gone before you reach it, for 1 min more.',
      'over, by compartment 3; the way up still clears it',
      'set by compartment 4; gone before you reach it',
      'the way up clears the ceiling, for 1 min more',
    ]);
    for (const creditedNoStopMin of [undefined, Infinity])
      expect(requiredStopNote({ ...CLEARING, creditedNoStopMin }, 'metric')).toBe('the way up clears the ceiling');
  });

  it('filling', () => {
    expect(said(FILLING)).toEqual([
      'There is no ceiling yet, but coming up at 9 m/min takes up enough gas to need a stop: 1 min at 3 m.',
      'the way up needs a stop; 1 min without it',
      'the way up itself will bring one',
      'the way up itself will ask for 1 min there',
    ]);
    expect(sayStanding({ ...FILLING, stop: undefined }, 'metric')).toMatch(/to need a stop: none\.$/);
    expect(requiredStopNote({ ...FILLING, stop: undefined }, 'metric')).toBe('');
  });

  it('owed', () => {
    expect(said(OWED)).toEqual([
      'You need to stop at 6 m for 2.4 min.',
      'over, by compartment 3',
      'set by compartment 4',
      'you need to stop there for 2.4 min',
    ]);
    expect(sayStanding({ ...OWED, stop: undefined }, 'metric')).toBe('You need to stop.');
  });

  it.each([
    [5.94, 'go down to 6 m and stop', 'you need to go down there for 2.4 min'],
    [5.96, 'stop at 6 m', 'you need to stop there for 2.4 min'],
  ])('owed at %f m, more or less than a depth is shown to above the stop', (depthM, way, note) => {
    expect(sayStanding({ ...OWED, depthM }, 'metric')).toBe(`You need to ${way} for 2.4 min.`);
    expect(requiredStopNote({ ...OWED, depthM }, 'metric')).toBe(note);
  });

  it('owed at the surface is a stop left out', () => {
    expect(sayStanding({ ...OWED, depthM: 0 }, 'imperial')).toBe('You have left out a stop: 2.4 min at 20 ft.');
    expect(requiredStopNote({ ...OWED, depthM: 0 }, 'metric')).toBe(
      'left out: 2.4 min there; follow your training for an omitted stop',
    );
  });

  it('owed where going down to the stop is all that it takes: no minutes are told', () => {
    const down = { ...OWED, depthM: 5, stop: { depthM: 9, minutes: 0 } };
    expect(sayStanding(down, 'metric')).toBe('You need to go down to 9 m; from there the way up is open.');
    expect(requiredStopNote(down, 'metric')).toBe('you need to go down there, not to wait');
    expect(requiredStopNote({ ...down, depthM: 0 }, 'metric')).toMatch(/^left out: under 1 min there;/);
    expect(sayStop(down.stop, 'metric')).toBe('under 1 min at 9 m');
    expect(sayStanding({ ...down, depthM: 8.98 }, 'metric')).toBe('You need to stop at 9 m for under 1 min.');
  });

  it('less than a minute left is told as that, and none as none', () => {
    expect(sayLeft(0.99, 'metric')).toBe('under 1 min');
    expect(sayLeft(1, 'metric')).toBe('1 min');
    expect(sayLeft(0, 'metric')).toBe('0 min');
    expect(sayStanding({ ...FREE, noStopMin: 0.4 }, 'metric')).toMatch(/you may stay under 1 min here/);
    expect(requiredStopNote({ ...CLEARING, creditedNoStopMin: 0.4 }, 'metric')).toMatch(/, for under 1 min more$/);
  });

  it('owed without end', () => {
    const endless = { ...OWED, stop: ENDLESS };
    expect(sayStanding(endless, 'metric')).toBe('You need to stop at 6 m, and no stop there is ever long enough.');
    expect(requiredStopNote(endless, 'metric')).toBe('no stop there is ever long enough');
    expect(sayStop(ENDLESS, 'metric')).toBe('without end at 6 m');
  });
});
