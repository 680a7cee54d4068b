import { bench, describe } from 'vitest';
import { figuresOf, type Figures } from '@/lib/ascent/figures';
import { defaultSettings } from '@/lib/dive/default-settings';
import type { Dive } from '@/lib/dive/dive';
import { setupSchema } from '@/lib/dive/setup';
import { computeTimeline, type Timeline } from '@/lib/dive/timeline';
import { DEFAULT_RULES } from '@/lib/rules/all';
import { ruleSettingsSchema } from '@/lib/rules/settings/rule-settings';
import { shownAt } from '@/lib/rules/unit/shown';
import { watchDive, type Watch } from '@/lib/rules/watch';

/** A day of two dives, three hours in all, every second of it. */
const day: Dive = {
  settings: defaultSettings(),
  lines: [],
  steps: [
    { kind: 'descend', toM: 30, durationS: 120 },
    { kind: 'stay', durationS: 1500 },
    { kind: 'ascend', toM: 5, durationS: 100 },
    { kind: 'stay', durationS: 900 },
    { kind: 'ascend', toM: 0, durationS: 40 },
    { kind: 'interval', durationS: 5000 },
    { kind: 'descend', toM: 20, durationS: 120 },
    { kind: 'stay', durationS: 1800 },
    { kind: 'ascend', toM: 0, durationS: 60 },
    { kind: 'interval', durationS: 1160 },
  ],
};
const right = setupSchema.parse({ name: 'Unit' });
const wrong = setupSchema.parse({ name: 'Unit', altitudeM: 2000 });
const strict = ruleSettingsSchema.parse({ imposedStop: { on: true }, tighterLimits: { on: true } });

describe('watching three hours of diving, second by second', () => {
  let timeline: Timeline | undefined;
  let figures: Figures | undefined;
  let watch: Watch | undefined;
  let other: Watch | undefined;
  let penalties: Watch | undefined;

  bench('the model alone', () => {
    timeline = computeTimeline(day, 1, { reuse: timeline });
    figures = figuresOf(timeline, day.settings, figures);
  });

  const truth = computeTimeline(day, 1);
  const known = { timeline: truth, figures: figuresOf(truth, day.settings) };
  bench('the rules of a unit set right, on top', () => {
    watch = watchDive(day, right, DEFAULT_RULES, 1, { reuse: watch, truth: known });
  });

  bench('a unit set wrong, with its own model', () => {
    other = watchDive(day, wrong, DEFAULT_RULES, 1, { reuse: other });
  });

  bench('a unit with every penalty', () => {
    penalties = watchDive(day, right, strict, 1, { reuse: penalties, truth: known });
  });

  const seen = watchDive(day, right, DEFAULT_RULES);
  bench('what it shows at one moment, stops and all', () => {
    shownAt(seen, 1600);
  });
});
