import { expect } from 'vitest';
import { figuresAt, figuresOf } from '@/lib/ascent/figures';
import type { Dive } from '@/lib/dive/dive';
import { samplingOf } from '@/lib/dive/sampling';
import { parseScript, writeScript } from '@/lib/dive/script';
import { SET_RIGHT } from '@/lib/dive/edit/set-right';
import { computeTimeline } from '@/lib/dive/timeline';
import { gasDensitiesOf } from '@/lib/exposure/gas-density';
import { gasSupplyOf } from '@/lib/exposure/gas-supply';
import { isobaricSwitches } from '@/lib/exposure/isobaric-switch';
import { oxygenExposureOf } from '@/lib/exposure/oxygen-exposure';
import { DEFAULT_RULES } from '@/lib/rules/all';
import { watchDive } from '@/lib/rules/watch';
import { RULE_READING_IDS, unitWorkingFor, type UnitReadingId } from '@/lib/working/rules/unit-all';
import { expectUnpolluted, promptly } from './hostile';

/** A week of dives, and what an instrument makes of it, may take this long on a slow machine, ms. */
const WHOLE_DIVE_MS = 6000;

/** Readings whose workings take every leg of the dive, every stop of the way up and every rule. */
const ASKED: readonly UnitReadingId[] = [
  'tension-1',
  'supersaturation',
  'ceiling',
  'no-stop',
  'time-to-surface',
  ...RULE_READING_IDS,
];

/** Where in some data a number is none, by the names that lead there; each place once. */
function notNumbers(data: unknown, path = '', seen = new Set<unknown>(), found = new Set<string>()): string[] {
  if (typeof data === 'number') {
    if (Number.isNaN(data)) found.add(path);
  } else if (typeof data === 'object' && data !== null && !seen.has(data)) {
    seen.add(data);
    if (ArrayBuffer.isView(data)) {
      if ((data as Float64Array).some(Number.isNaN)) found.add(path);
    } else
      for (const [key, value] of Object.entries(data))
        notNumbers(value, `${path}.${Array.isArray(data) ? '' : key}`, seen, found);
  }
  return [...found];
}

/** Works out all there is of a dive; every number of it has to be one. */
function expectWorkedOut(dive: Dive): void {
  const { everyS, intervalEveryS } = samplingOf(dive, 30);
  const timeline = promptly(() => computeTimeline(dive, everyS, { intervalEveryS }));
  const figures = promptly(() => figuresOf(timeline, dive.settings));
  const setups = [SET_RIGHT, ...(dive.settings.setups ?? []).slice(0, 2)];
  const watches = setups.map((setup) =>
    promptly(
      () => watchDive(dive, setup, DEFAULT_RULES, everyS, { truth: { timeline, figures }, intervalEveryS }),
      WHOLE_DIVE_MS,
    ),
  );
  expect(notNumbers([timeline, figures, watches])).toEqual([]);
  expect(notNumbers(promptly(() => gasSupplyOf(timeline, dive.settings)))).toEqual([]);
  for (const worked of [oxygenExposureOf, gasDensitiesOf, isobaricSwitches])
    expect(notNumbers(promptly(() => worked(timeline)))).toEqual([]);
  for (const share of [0, 0.4, 0.8, 1]) {
    const sample = Math.floor((timeline.length - 1) * share);
    expect(notNumbers(promptly(() => figuresAt(timeline, figures, sample)))).toEqual([]);
    for (const watch of watches) {
      const workings = promptly(
        () => ASKED.map((reading) => unitWorkingFor(reading, { watch, sample })),
        WHOLE_DIVE_MS,
      );
      expect(notNumbers(workings)).toEqual([]);
    }
  }
}

export function expectRead(text: string): void {
  const read = promptly(() => parseScript(text));
  expectUnpolluted(read);
  if (read.ok) {
    expectWorkedOut(read.dive);
    expect(promptly(() => writeScript(read.dive))).toBe(text.replace(/\r(?!\n)/g, '\n'));
    return;
  }
  const lines = text.split(/\r\n|\r|\n/);
  expect(read.errors.length).toBeGreaterThan(0);
  for (const { line, column, endColumn, message, mend } of read.errors) {
    expect(column).toBeGreaterThanOrEqual(1);
    expect(endColumn).toBeGreaterThan(column);
    expect(endColumn - 1).toBeLessThanOrEqual(lines[line - 1]!.length + (message.includes('are read') ? 1 : 0));
    expect(message).toMatch(/\S.*[.?]$/s);
    expect(mend).toMatch(/\S.*[.?]$/s);
    expect((message + mend).replace(/“[^”]*”/g, '')).not.toMatch(/NaN|Infinity|undefined|\[object/);
  }
}
