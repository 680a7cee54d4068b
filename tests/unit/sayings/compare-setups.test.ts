import { describe, expect, it } from 'vitest';
import { stopChanges } from '@/lib/ascent/stop-changes';
import { compareSetups } from '@/lib/sayings/compare-setups';
import { printAs } from '@/lib/sayings/measures';
import { down, rest, setupOf, stay, up, watched } from '../rules/made-dives';

const steps = [
  down(30, 100),
  stay(1500),
  up(5, 170),
  stay(180),
  up(0, 40),
  rest(7200),
  down(20, 120),
  stay(1800),
  up(0, 150),
];
const right = watched(steps);
const compared = (setup: Parameters<typeof setupOf>[0], system: 'metric' | 'imperial' = 'metric') =>
  compareSetups(watched(steps, {}, { name: 'Rental unit', ...setup }), right, system);

describe('a unit held against one that is right', () => {
  it.each([
    [
      { gas: { o2: 0.32, he: 0 } },
      /^Rental unit believes 32%, not air: it shows \d+ min more no-stop time at 30 m than is so\.$/,
    ],
    [
      { altitudeM: 2000 },
      /^Rental unit is set to an altitude of 2000 m, not 0 m: it shows \d+ min less no-stop time at 30 m than is so\.$/,
    ],
    [
      { water: 'fresh' as const },
      /^Rental unit is set to fresh water, not reference water: it shows 30\.6 m where the depth is 30 m\.$/,
    ],
    [
      { gradientFactors: { low: 0.4, high: 0.7 } },
      /^Rental unit goes by gradient factors 40\/70, not 85\/85: it shows \d+ min less/,
    ],
    [{ depthOffsetM: -1.2 }, /^Rental unit reads 1\.2 m too shallow: it shows 28\.8 m where the depth is 30 m\.$/],
    [{ depthScale: 1.03 }, /^Rental unit reads 103% of every depth: it shows 30\.9 m where the depth is 30 m\.$/],
    [
      { freshBeforeDives: [1] },
      /^Rental unit starts dive 2 with fresh tissues: on dive 2 it shows \d+ min more no-stop time at 20 m than is so\.$/,
    ],
    [
      { mode: 'gauge' as const },
      /^Rental unit is in gauge mode: it shows depth and time only, though on dive 1, at 15:48 a stop becomes required\.$/,
    ],
    [{}, /^Rental unit is set as the dive is, and it shows nothing other than is so\.$/],
  ])('with %j is told apart', (setup, sentence) => {
    expect(compared(setup).sentences[0]).toMatch(sentence);
  });

  it('counts what each of them shows, in whole minutes', () => {
    const { differences } = compared({ gas: { o2: 0.32, he: 0 } });
    const [noStop] = differences;
    expect(noStop!.kind).toBe('no-stop time');
    expect(noStop!.text).toContain(`${noStop!.shown - noStop!.so} min more`);
  });

  it('has its minutes from the table of sayings, at the moment it tells', () => {
    for (const gas of [0.25, 0.28, 0.32].map((o2) => ({ o2, he: 0 }))) {
      const wrong = watched(steps, {}, { name: 'Rental unit', gas });
      const told = compareSetups(wrong, right).differences.filter(({ kind }) => kind === 'no-stop time');
      expect(told.length).toBeGreaterThan(0);
      for (const { timeS, shown, so } of told) {
        const at = right.timeline.timeS.indexOf(timeS);
        const minutes = [wrong, right].map(({ figures }) => printAs('noStopMin', figures.noStopMin[at]!, 'metric'));
        expect([shown, so].map((min) => `${min} min`)).toEqual(minutes.map((text) => text.replace(/^more than /, '')));
      }
    }
  });

  it('counts each dive by its own clock, and asks for a stop when it is owed, not when a ceiling is first there', () => {
    const owed = stopChanges(right.timeline, right.figures).find(({ state }) => state === 'owed')!;
    const [gauge] = compared({ mode: 'gauge' }).differences;
    expect(gauge).toMatchObject({ timeS: owed.timeS, so: owed.stopM });
    expect(owed.timeS).toBeGreaterThan(right.timeline.timeS[right.figures.ceilingM.findIndex((m) => m > 0)]! + 60);
    const day = [down(12, 60), stay(600), up(0, 90), rest(86_400), ...steps.slice(0, 5)];
    const nitrox = watched(day, {}, { name: 'Rental unit', gas: { o2: 0.5, he: 0 } });
    const texts = compareSetups(nitrox, watched(day)).differences.map(({ text }) => text);
    expect(texts.find((text) => text.includes('ceiling'))).toMatch(/^on dive 2, at 27:\d\d it shows /);
  });

  it('never tells a ceiling shallower than it is, in metres or feet', () => {
    for (const [system, unit, unitM, stepM] of [
      ['metric', 'm', 1, 0.1],
      ['imperial', 'ft', 0.3048, 0.3048],
    ] as const) {
      const { differences } = compared({ gradientFactors: { low: 0.3, high: 0.6 } }, system);
      const ceiling = differences.find(({ kind }) => kind === 'ceiling')!;
      const told = [...ceiling.text.matchAll(/(?:ceiling|one) at ([\d.]+) (m|ft)/g)];
      const figures = [ceiling.shown, ceiling.so].filter((depthM) => depthM > 0);
      expect(told.map(([, , told]) => told)).toEqual(figures.map(() => unit));
      told.forEach(([, depth], index) => {
        expect(Number(depth) * unitM).toBeGreaterThanOrEqual(figures[index]! - 1e-6);
        expect(Number(depth) * unitM).toBeLessThan(figures[index]! + stepM + 1e-6);
      });
    }
  });

  it.each([
    [
      { gas: { o2: 0.5, he: 0 } },
      [
        'Rental unit believes 50%, not air: it shows 52 min more no-stop time at 30 m than is so.',
        'On dive 2 it shows 98 min more no-stop time at 20 m than is so.',
        'On dive 1, at 27:01 it shows no ceiling where there is one at 3.8 m.',
        'On dive 1 it never asks for the stop that is required.',
        'It does not lock, as a unit set right would after dive 1, at 0 min.',
      ],
    ],
    [
      { depthOffsetM: 0.5 },
      [
        'Rental unit reads 0.5 m too deep: it shows 30.5 m where the depth is 30 m.',
        'It shows 1 min less no-stop time at 30 m than is so.',
        'On dive 2 it shows 3 min less no-stop time at 20 m than is so.',
        'On dive 1, at 32:07 it shows a ceiling at 2.0 m where there is one at 1.8 m.',
        'On dive 2 it asks for a required stop where none is needed.',
      ],
    ],
    [
      { gradientFactors: { low: 0.3, high: 0.5 } },
      [
        'Rental unit goes by gradient factors 30/50, not 85/85: it shows 7 min less no-stop time at 30 m than is so.',
        'On dive 2 it shows 22 min less no-stop time at 20 m than is so.',
        'On dive 1, at 14:09 it shows a ceiling at 9.3 m where there is one at 0.4 m.',
        'On dive 2 it asks for a required stop where none is needed.',
      ],
    ],
  ])('tells all that %j makes it show, each where it shows most', (setup, sentences) => {
    const { differences, sentences: told } = compared(setup);
    expect(told).toEqual(sentences);
    // Where it shows most: the moments are those of the sentences.
    for (const { kind, timeS, shown, so } of differences) {
      const at = right.timeline.timeS.indexOf(timeS);
      if (kind === 'ceiling') expect(right.figures.ceilingM[at]).toBe(so);
      if (kind === 'depth') expect([right.timeline.depthM[at], shown - so]).toEqual([30, 0.5]);
      if (kind === 'stops') expect([shown, so].sort()).toEqual([0, 1]);
    }
  });

  it('misses the stop that is required', () => {
    const { differences } = compared({ gas: { o2: 0.5, he: 0 } });
    expect(differences.map(({ text }) => text)).toContain('on dive 1 it never asks for the stop that is required');
    expect(differences.find(({ kind }) => kind === 'ceiling')).toMatchObject({ shown: 0 });
    expect(differences.find(({ kind }) => kind === 'lock')).toMatchObject({
      shown: 0,
      so: 1,
      text: expect.stringMatching(/^it does not lock, as a unit set right would after dive 1, at 0 min$/),
    });
  });

  it('locks where one that is right does not', () => {
    const { differences } = compareSetups(right, watched(steps, {}, { gas: { o2: 0.5, he: 0 } }));
    expect(differences.find(({ kind }) => kind === 'lock')).toMatchObject({
      shown: 1,
      so: 0,
      text: 'it locks after dive 1, at 0 min, where a unit set right would not',
    });
  });

  it('asks for a stop that is not', () => {
    const texts = compared({ gradientFactors: { low: 0.3, high: 0.5 } }).differences.map(({ text }) => text);
    expect(texts).toContain('on dive 2 it asks for a required stop where none is needed');
  });

  it('lists every setting that is wrong', () => {
    const { wrong, sentences } = compared({ gas: { o2: 0.36, he: 0 }, altitudeM: 1000, depthOffsetM: 0.5 }, 'imperial');
    expect(wrong).toEqual([
      'believes 36%, not air',
      'is set to an altitude of 3281 ft, not 0 ft',
      'reads 2 ft too deep',
    ]);
    expect(sentences[0]).toContain(
      'believes 36%, not air, is set to an altitude of 3281 ft, not 0 ft and reads 2 ft too deep: it shows 100 ft where the depth is 98 ft.',
    );
  });

  it('has to have been sampled alike', () => {
    expect(() => compareSetups(watched(steps.slice(0, 3)), right)).toThrow(RangeError);
  });
});
