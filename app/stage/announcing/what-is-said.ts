import { eventText } from '@/lib/rules/all';
import { shownAt } from '@/lib/rules/unit/shown';
import { modelSayings } from '@/lib/sayings/model-readings';
import { unitSayings } from '@/lib/sayings/unit-readings';
import { printAs } from '@/lib/sayings/measures';
import { printDayClock, sayAtDayClock, shownFromS } from '@/lib/dive/day-clock';
import type { Heard } from '@/lib/sayings/where';
import type { UnitSystem } from '@/lib/quantity/unit-system';
import { leadingCompartment } from '../../pictures/leading';
import type { Scene } from '../../pictures/scene';
import { chosenWatch } from '../../pictures/scene-watches';
import { cursorSample } from '../desk-store';
import type { DeskState } from '../desk-state';
import { modelMomentOf } from '../model-moment';
import { happeningsIn, SOMETHING_HAPPENS } from '../moments';
import { READING_IDS, type ReadingId } from '../reading-ids';

/** No-stop times at which whoever listens is told, min, as they are shown: whole and rounded down. */
const CALLS_MIN = [10, 5, 1] as const;

/** Something worth saying: when it happened, and what it was called. A call of the no-stop time has no name. */
export interface News {
  readonly timeS: number;
  readonly name: string | undefined;
  /** A unit says so, with the time in its words. */
  readonly byUnit: boolean;
}

/** The instant at the cursor, as one listens to it where some readings are not shown. */
export function heardAt(desk: DeskState, units: UnitSystem, unread: readonly ReadingId[]): Heard {
  const sample = cursorSample(desk);
  return {
    model: modelMomentOf(desk.scene, sample),
    unit: shownAt(chosenWatch(desk), sample, units),
    leader: leadingCompartment(desk.scene, sample),
    covered: [...desk.covered, ...unread],
  };
}

/** The readings that are open, one by one, where only some are shown. Those of oxygen and gas are fetched when asked for. */
export function sayReadings(heard: Heard, units: UnitSystem): string {
  const said: Readonly<Partial<Record<ReadingId, { readonly name: string; readonly text: string }>>> = {
    ...modelSayings(heard.model, units),
    ...unitSayings(heard.unit, units),
  };
  return READING_IDS.flatMap((id) => {
    const reading = heard.covered.includes(id) ? undefined : said[id];
    return reading ? [`${reading.name}: ${reading.text}.`] : [];
  }).join(' ');
}

/** What happens after one time of the desk's dive, up to another. */
export function newsBetween(desk: DeskState, afterS: number, toS: number, units: UnitSystem): readonly News[] {
  const { scene } = desk;
  const { timeS, depthM, length } = scene.timeline;
  const news: News[] = [...happeningsIn(scene, chosenWatch(desk), units, afterS, toS)];
  const { noStopMin } = scene.figures;
  const from = cursorSample({ scene, cursorS: afterS });
  for (let i = from + 1; i < length && timeS[i]! <= toS; i += 1) {
    const [before, now] = [noStopMin[i - 1]!, noStopMin[i]!];
    if (depthM[i]! > 0 && now > 0 && CALLS_MIN.some((call) => before >= call + 1 && now < call + 1))
      news.push({ timeS: timeS[i]!, name: undefined, byUnit: false });
  }
  return news.sort((one, other) => one.timeS - other.timeS);
}

/** News as sentences. */
export function tellNews(news: readonly News[], { scene, covered }: DeskState): string {
  const named = news.filter(({ name }) => name !== undefined);
  if (covered.length > 0) return named.length > 0 ? SOMETHING_HAPPENS : '';
  return named
    .flatMap(({ timeS, name, byUnit }) => {
      if (byUnit) return [name];
      // A unit that works stops out says the same of a ceiling, and more.
      const told = named.some((other) => other.byUnit && other.timeS === timeS);
      return told ? [] : [`${sayAtDayClock(scene.timeline, timeS)}: ${name}`];
    })
    .join(' ');
}

/** What matters of a whole dive when it is changed: its deepest ceiling, and the first stop its unit asks for. */
export interface Outcome {
  readonly ceiling: string;
  readonly ceilingAt: string;
  readonly stop: string;
  readonly stopAt: string;
}

export function outcomeOf(desk: { readonly scene: Scene; readonly unit: number }, units: UnitSystem): Outcome {
  const { timeline, figures } = desk.scene;
  let deepest = 0;
  for (let i = 1; i < timeline.length; i += 1) if (figures.ceilingM[i]! > figures.ceilingM[deepest]!) deepest = i;
  const ceilingM = figures.ceilingM[deepest]!;
  const asked = chosenWatch(desk).events.find(({ kind }) => kind === 'stop-owed');
  return {
    ceiling: printAs('ceilingM', ceilingM, units),
    ceilingAt: ceilingM > 0 ? sayAtDayClock(timeline, timeline.timeS[deepest]!) : '',
    stop: asked ? eventText(asked, units) : '',
    stopAt: asked ? printDayClock(timeline, shownFromS(timeline, asked.timeS)) : '',
  };
}

/** What an edit has done to the dive, against what it was. */
export function sayOutcome(before: Outcome, now: Outcome): string {
  const ceiling =
    now.ceilingAt === ''
      ? before.ceilingAt === ''
        ? 'No ceiling on this dive, as before.'
        : `No ceiling on this dive any more; its deepest was ${before.ceiling}.`
      : before.ceilingAt === ''
        ? `This dive now has a ceiling. ${now.ceilingAt} it is deepest, ${now.ceiling}.`
        : now.ceiling === before.ceiling
          ? `The deepest ceiling is ${now.ceiling}, as before.`
          : `The deepest ceiling is ${now.ceiling}; it was ${before.ceiling}.`;
  return [ceiling, sayStopBeside(before, now)].filter(Boolean).join(' ');
}

function sayStopBeside(before: Outcome, now: Outcome): string {
  if (now.stop === before.stop) return now.stop === '' ? '' : 'The stop is owed as before.';
  if (now.stop === '') return 'No stop is asked for any more.';
  if (before.stop === '') return `${now.stop} Before, no stop was owed.`;
  return now.stopAt === before.stopAt ? now.stop : `${now.stop} Before, that was at ${before.stopAt}.`;
}
