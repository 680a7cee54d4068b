import type { Scenario } from '@/content/scenarios/scenario-schema';
import { scenarios } from '@/content/scenarios/scenarios';
import { routes } from './routes';

const PLAY = 'play=';

/** The address that opens the desk on a ready dive and plays it. */
export function playPath(id: string): string {
  return `${routes.desk.path}#${PLAY}${id}`;
}

/** The name of the ready dive that an address asks to be played, from what follows its #; undefined where it asks for none. */
export function askedToPlay(fragment: string): string | undefined {
  return fragment.startsWith(PLAY) ? fragment.slice(PLAY.length) : undefined;
}

export function readyDive(id: string): Scenario | undefined {
  return scenarios.find((scenario) => scenario.id === id);
}
