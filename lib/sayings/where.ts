import type { Shown } from '../rules/unit/shown';
import type { UnitSystem } from '../quantity/unit-system';
import { printDayClock } from '../dive/day-clock';
import { modelSayings, standingOf, type ModelMoment } from './model-readings';
import { sayStanding } from './stop-state';
import { unitSayings } from './unit-readings';

/** An instant of the desk as one listens to it. */
export interface Heard {
  readonly model: ModelMoment;
  readonly unit: Shown;
  /** The compartment (1–16) that leads. */
  readonly leader: number;
  /** Readings that are covered: nothing is said from which they could be told. */
  readonly covered: readonly string[];
}

/** From any of these the stop could be told. */
const OF_STANDING = ['no-stop', 'ceiling', 'required-stop', 'time-to-surface'];
const OF_LEADER = [...OF_STANDING, 'supersaturation', 'surfacing-supersaturation'];

const isOpen = ({ covered }: Pick<Heard, 'covered'>, of: readonly string[]) => !covered.some((id) => of.includes(id));

/** Whether how the diver stands may be told while these readings are covered, and who leads. */
export function tellsUnder(covered: readonly string[]): { readonly standing: boolean; readonly leader: boolean } {
  return { standing: isOpen({ covered }, OF_STANDING), leader: isOpen({ covered }, OF_LEADER) };
}

/** How the diver stands, in a sentence: `Nothing is owed …`. Empty where that is covered. */
export function sayStandingHeard(heard: Heard, system: UnitSystem): string {
  return isOpen(heard, OF_STANDING) ? sayStanding(standingOf(heard.model), system) : '';
}

/** Whether a stop is owed, or the way up itself will ask for one. */
export function needsStopHeard({ model }: Pick<Heard, 'model'>): boolean {
  const { state } = standingOf(model);
  return state === 'owed' || state === 'filling';
}

/** Which compartment leads: `Compartment 5 leads.` Empty where none does, or where that is covered. */
export function sayLeader(heard: Heard): string {
  return heard.leader > 0 && isOpen(heard, OF_LEADER) ? `Compartment ${heard.leader} leads.` : '';
}

/** Where the diver is, in full: time, depth, rate, how the diver stands, time to surface, leader and alarms. */
export function sayWhere(heard: Heard, system: UnitSystem): string {
  const { model, unit } = heard;
  const said = modelSayings(model, system);
  const shown = unitSayings(unit, system);
  const toSurface = isOpen(heard, OF_STANDING)
    ? `${said['time-to-surface'].name}: ${said['time-to-surface'].text}.`
    : '';
  return [
    isOpen(heard, ['time']) && `${clockOf(model)}.`,
    isOpen(heard, ['depth']) && `${said.depth.text} ${said.depth.note}.`,
    isOpen(heard, ['rate']) && `${shown.rate.name}: ${shown.rate.text}.`,
    sayStandingHeard(heard, system),
    toSurface,
    sayLeader(heard),
    ...(heard.covered.length === 0 ? unit.alarms.map(({ text }) => text) : []),
  ]
    .filter(Boolean)
    .join(' ');
}

/** The same in a few words, as the value of the hand on time: `17:40, 18.0 m, no-stop time 12 min`. */
export function sayWhereShortly(heard: Omit<Heard, 'unit' | 'leader'>, system: UnitSystem): string {
  const said = modelSayings(heard.model, system);
  const open = (id: string) => !heard.covered.includes(id);
  const stop = needsStopHeard(heard);
  const state = stop ? said['required-stop'] : said['no-stop'];
  const words = [clockOf(heard.model)];
  if (open('depth')) words.push(said.depth.text);
  if (OF_STANDING.every(open)) words.push(`${stop ? 'stop' : state.name.toLowerCase()} ${state.text}`);
  return words.join(', ');
}

function clockOf({ timeline, sample }: ModelMoment): string {
  return printDayClock(timeline, timeline.timeS[sample]!);
}
