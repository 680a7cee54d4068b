import type { UnitSystem } from '@/lib/quantity/unit-system';
import { needsStopHeard, sayLeader, sayStandingHeard, sayWhere, sayWhereShortly } from '@/lib/sayings/where';
import type { DeskDocument, DeskState } from '../desk-state';
import type { DeskStore } from '../desk-store';
import { longestGoneS } from '../jump';
import type { ReadingId } from '../reading-ids';
import { pacedVoice } from './paced-voice';
import { sayChange, type TitleOf } from './said-change';
import {
  heardAt,
  newsBetween,
  outcomeOf,
  sayOutcome,
  sayReadings,
  tellNews,
  type News,
  type Outcome,
} from './what-is-said';

/** An edit has settled when nothing has changed for so long, ms; a jump, sooner. */
const SETTLED_MS = 600;
const ARRIVED_MS = 400;

/** Under a hand on the lever time goes no further than this from one look to the next, s; more is a jump. */
const STEERED_S = 60;

/** The same words within so long are of the same event, s. */
const ECHO_S = 10;

/** How the script stands after a turn of what was done. */
const SCRIPT_AFTER: Readonly<Record<string, string>> = {
  'Undone.': 'The script is as it was before.',
  'Done again.': 'The script is as you had changed it.',
};

const KEPT_IN_HISTORY = ['script', 'rules', 'pictures', 'covered', 'overlay'] as const;
const isSame = (one: DeskDocument, other: DeskDocument) => KEPT_IN_HISTORY.every((name) => one[name] === other[name]);

/** A remark or a title in the script changes nothing of its dive. */
const isSameDive = ({ scene: { dive: one } }: DeskState, { scene: { dive: other } }: DeskState) =>
  JSON.stringify([one.settings, one.steps]) === JSON.stringify([other.settings, other.steps]);

/** An edit that has not settled yet: the desk and its dive as they were, and whether it takes back or does again. */
interface Unsettled {
  readonly before: DeskState;
  readonly outcome: Outcome;
  readonly turn: string;
}

/** How a dive is listened to where it is not a desk of one's own. */
export interface Listening {
  /** Readings that are not shown here, and so not said. */
  readonly unread?: readonly ReadingId[];
  /** Time goes where another hand leads it. */
  readonly led?: boolean;
  /** What pictures are called, where they may come and go. */
  readonly titleOf?: TitleOf;
}

/**
 * Listens to a dive and says what someone who can't see it has to know. `where` says, at once, where the diver is.
 * A whole page is silent about what it does by itself on opening.
 */
export function announcing(
  store: DeskStore,
  units: () => UnitSystem,
  say: (text: string) => void,
  { unread = [], led = false, titleOf }: Listening = {},
) {
  const heardNow = () => heardAt(store.getState(), units(), unread);
  // Where only some readings are shown, it is the marks of the dive that tell what happens.
  const happenings = (desk: DeskState, fromS: number, toS: number) =>
    unread.length === 0 || desk.pictures.includes('profile') ? newsBetween(desk, fromS, toS, units()) : [];
  let heardS = store.getState().cursorS;
  let leader = '';
  let arriving: ReturnType<typeof setTimeout> | undefined;
  let settling: ReturnType<typeof setTimeout> | undefined;
  let unsettled: Unsettled | undefined;
  const steered = new Map<string, number>();

  /** A dive under a hand is worked out anew all the time: what has just happened in it comes a moment later once more. */
  const isEcho = (desk: DeskState, { name, timeS }: News) => {
    if (!desk.run || name === undefined) return false;
    const words = name.replace(/\d+:\d\d/g, '');
    const beforeS = steered.get(words);
    steered.set(words, timeS);
    return beforeS !== undefined && Math.abs(timeS - beforeS) <= ECHO_S;
  };

  /** The leader where it is another than was last said. */
  const newLeader = (said: string) => {
    if (said === leader) return '';
    leader = said;
    return said;
  };
  const voice = pacedVoice<News>((news) => {
    const desk = store.getState();
    const told = tellNews(news, desk);
    const heard = heardNow();
    const called = news.some(({ name }) => name === undefined);
    const standing = called || needsStopHeard(heard) ? sayStandingHeard(heard, units()) : '';
    if (told !== '' || standing !== '') say(joined(told, standing, newLeader(sayLeader(heard)), waits(desk)));
  });

  function moved(desk: DeskState, wasPlaying: boolean): void {
    const fromS = heardS;
    heardS = desk.cursorS;
    const stepS = desk.cursorS - fromS;
    const goes = led || desk.playing || wasPlaying || desk.heldAtS !== undefined || desk.run !== undefined;
    const mostS = led || desk.run ? STEERED_S : longestGoneS(desk);
    if (goes && stepS > 0 && stepS <= mostS)
      happenings(desk, fromS, desk.cursorS)
        .filter((news) => !isEcho(desk, news))
        .forEach(voice.add);
    else if (stepS !== 0 && !desk.playing && (led || isAskedByPress())) {
      clearTimeout(arriving);
      arriving = setTimeout(arrived, ARRIVED_MS);
    }
    if (wasPlaying && !desk.playing && desk.cursorS >= desk.scene.timeline.timeS.at(-1)!)
      voice.add({ timeS: desk.cursorS, name: 'the dive is over.', byUnit: false });
  }

  function arrived(): void {
    const desk = store.getState();
    const heard = heardNow();
    voice.interrupted();
    const here = happenings(desk, desk.cursorS - 1, desk.cursorS + 0.5);
    say(
      joined(
        `${sayWhereShortly(heard, units())}.`,
        tellNews(here, desk),
        needsStopHeard(heard) ? sayStandingHeard(heard, units()) : '',
        newLeader(sayLeader(heard)),
      ),
    );
  }

  function changed(desk: DeskState, before: DeskState): void {
    // Put there by the page itself, or by a hand on the lever, which has words of its own.
    if (desk.past.length + desk.future.length === 0 || before.run) return;
    clearTimeout(settling);
    // The dive as it was is worked out now: its memory is used again for the next.
    unsettled ??= { before, outcome: outcomeOf(before, units()), turn: '' };
    unsettled = { ...unsettled, turn: turnOf(desk, before) };
    settling = setTimeout(settled, SETTLED_MS);
  }

  function settled(): void {
    const desk = store.getState();
    const { before, outcome, turn } = unsettled!;
    unsettled = undefined;
    const heard = heardNow();
    const other = desk.rules !== before.rules || !isSameDive(desk, before);
    const open = desk.covered.length === 0 && desk.errors.length === 0 && !desk.run;
    voice.interrupted();
    say(
      joined(
        turn,
        desk.script !== before.script ? (SCRIPT_AFTER[turn] ?? '') : '',
        sayChange(before, desk, heard, turn === '' ? undefined : titleOf),
        desk.script !== before.script ? sayMistakes(desk.errors) : '',
        other && open ? sayOutcome(outcome, outcomeOf(desk, units())) : '',
      ),
    );
  }

  const stop = store.subscribe((desk, before) => {
    if (!isSame(desk, before)) changed(desk, before);
    // Whoever heard of it first may have moved time again: what stands now is what counts.
    moved(store.getState(), before.playing);
  });

  return {
    where() {
      voice.interrupted();
      const heard = heardNow();
      leader = sayLeader(heard);
      say(unread.length === 0 ? sayWhere(heard, units()) : sayReadings(heard, units()));
    },
    end() {
      stop();
      voice.end();
      clearTimeout(arriving);
      clearTimeout(settling);
    },
  };
}

/** Said once, when typing pauses; each stands in full under the script. */
function sayMistakes(errors: DeskState['errors']): string {
  const [first] = errors;
  if (!first) return '';
  const many = errors.length === 1 ? 'A mistake in the script' : `${errors.length} mistakes in the script, the first`;
  return `${many} in line ${first.line}: ${first.message} ${first.mend}`;
}

const joined = (...sentences: readonly string[]) => sentences.filter((one) => one !== '').join(' ');

const waits = ({ heldAtS }: DeskState) => (heldAtS === undefined ? '' : 'Play goes on.');

/** Whether a change took the last one back, or did it again. */
function turnOf(desk: DeskState, before: DeskState): string {
  if (desk.future.length > before.future.length) return 'Undone.';
  const [next] = before.future;
  return next && desk.future.length === before.future.length - 1 && isSame(next, desk) ? 'Done again.' : '';
}

/** Whether time was moved by a button or a presenter's key: a slider says its own value. */
function isAskedByPress(): boolean {
  const { activeElement, documentElement } = document;
  if (activeElement instanceof HTMLInputElement) return false;
  return (
    'presenting' in documentElement.dataset ||
    activeElement?.matches('[data-part="time"] *, [aria-label="Time"] *') === true
  );
}
