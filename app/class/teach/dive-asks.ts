import type { Ask, Truth } from '@/lib/class/ask';
import { needsStop } from '@/lib/ascent/stop-state';
import type { Dimension } from '@/lib/lesson/expression/dimension';
import { printDayClock } from '@/lib/dive/day-clock';
import { modelSayings, type ModelMoment, type ModelReadingId } from '@/lib/sayings/model-readings';
import type { Scene } from '../../pictures/scene';
import { lineUntil } from '../shown/line-until';
import { modelMomentOf } from '../../stage/model-moment';

/*
 * What a covered reading of a dive may be asked as, at the moment the hand stands on. The answer is the engine's, read off
 * the same moment.
 */

interface DiveAsk {
  readonly id: string;
  readonly words: string;
  /** The reading that has to be covered. */
  readonly reading: ModelReadingId | undefined;
  readonly make: (moment: ModelMoment) => Made;
}

type Made =
  | { readonly ok: true; readonly asked: AskedPart; readonly truth: Truth }
  /** Why it can't be asked here. */
  | { readonly ok: false; readonly why: string };

type AskedPart =
  | { readonly by: 'number'; readonly dimension: Dimension }
  | { readonly by: 'choice'; readonly options: string[] }
  | { readonly by: 'leader' };

/** A figure asked for as a number: what it is in the unit it is typed in, and how far off still counts. */
function number(
  reading: ModelReadingId,
  dimension: Dimension,
  within: number,
  value: (moment: ModelMoment) => number,
  none: string,
): DiveAsk['make'] {
  return (moment) => {
    const figure = value(moment);
    if (!Number.isFinite(figure) || figure > 999) return { ok: false, why: none };
    return {
      ok: true,
      asked: { by: 'number', dimension },
      truth: {
        by: 'number',
        value: figure,
        within,
        printed: {
          metric: modelSayings(moment, 'metric')[reading].text,
          imperial: modelSayings(moment, 'imperial')[reading].text,
        },
      },
    };
  };
}

const NO_STOP_CAP = 'The no-stop time is over 99 min or none here; move to a moment at which it runs.';

/** Everything that can be asked of a moment, each listed here once. */
export const DIVE_ASKS: readonly DiveAsk[] = [
  {
    id: 'no-stop',
    words: 'How long may you still stay here before you need a stop?',
    reading: 'no-stop',
    make: (moment) =>
      moment.now.noStop.minutes > 99
        ? { ok: false, why: NO_STOP_CAP }
        : number('no-stop', 'time', 1.5, ({ now }) => now.noStop.minutes, NO_STOP_CAP)(moment),
  },
  {
    id: 'stop',
    words: 'Going up now at the plan’s rate: will there be a stop?',
    reading: 'required-stop',
    make: ({ now }) => ({
      ok: true,
      asked: { by: 'choice', options: ['No: straight up is open.', 'Yes: a stop has to be made on the way.'] },
      truth: { by: 'choice', right: needsStop(now.schedule) ? 1 : 0 },
    }),
  },
  {
    id: 'ceiling',
    words: 'How deep is the ceiling now? Nothing is 0.',
    reading: 'ceiling',
    make: number('ceiling', 'depth', 1, ({ now }) => now.ceiling.depthM, 'There is no ceiling that ends here.'),
  },
  {
    id: 'time-to-surface',
    words: 'How long does the way up take from here, stops and all?',
    reading: 'time-to-surface',
    make: number(
      'time-to-surface',
      'time',
      2,
      ({ now }) => now.schedule.timeToSurfaceMin,
      'No stop there is ever long enough here.',
    ),
  },
  {
    id: 'leader',
    words: 'Which compartment leads: which one sets the no-stop time now?',
    reading: 'no-stop',
    make: ({ now }) =>
      now.noStop.leader < 1
        ? { ok: false, why: 'None leads here: nothing would ever end the stay.' }
        : { ok: true, asked: { by: 'leader' }, truth: { by: 'leader', compartment: now.noStop.leader } },
  },
  {
    id: 'on-surfacing',
    words: 'If you were at the surface this instant: how much of its limit would the fullest compartment reach?',
    reading: 'surfacing-supersaturation',
    make: number(
      'surfacing-supersaturation',
      'percent',
      8,
      ({ now }) => now.surfacingSupersaturation.value * 100,
      'There is no figure here.',
    ),
  },
];

/** A question of a moment of a dive, with the engine's answer; or why it can't be asked here. */
export function diveAsk(
  { words, make }: DiveAsk,
  scene: Scene,
  sample: number,
  id: string,
): { readonly ok: true; readonly ask: Ask; readonly truth: Truth } | { readonly ok: false; readonly why: string } {
  const made = make(modelMomentOf(scene, sample));
  if (!made.ok) return made;
  const timeS = scene.timeline.timeS[sample]!;
  const ask: Ask = {
    id,
    title: `At ${printDayClock(scene.timeline, timeS)}`,
    text: words,
    picture: lineUntil(scene, timeS),
    ...made.asked,
  };
  return { ok: true, ask, truth: made.truth };
}
