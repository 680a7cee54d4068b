import { lessonPath } from '../lessons/paths';
import { lessonSlugs, loadLesson } from '../lessons/load-lessons';
import { playPath } from '../parts/ready-dives';
import { routes } from '../parts/routes';

interface Way {
  readonly words: string;
  readonly path: string;
}

export interface Door {
  readonly who: string;
  readonly what: string;
  /** The first is the one to begin with. */
  readonly ways: readonly [Way, ...Way[]];
}

/** The first lesson of a level, by its title. */
function firstOf(level: string, words: (title: string) => string): Way {
  const slug = lessonSlugs().find((one) => loadLesson(one).lesson.level === level);
  if (slug === undefined) return { words: 'The lessons', path: routes.lessons.path };
  return { words: words(loadLesson(slug).lesson.title), path: lessonPath(slug) };
}

/** One door for each kind of reader, with somewhere to begin at once. */
export const doors = (): readonly [teach: Door, learn: Door, alone: Door] => [
  {
    who: 'If you teach',
    what: 'Show a class or a customer what an instrument shows on the way down and up, and why it suddenly asks for a stop.',
    ways: [
      { words: 'Watch a unit ask for a stop', path: playPath('overstayed') },
      { words: 'A fast ascent, beside a slow one', path: playPath('too-fast') },
      { words: 'One dive, four settings', path: playPath('four-settings') },
    ],
  },
  {
    who: 'If you are learning',
    what: 'Guess first, then see, then read the working: no-stop times, safety stops, second dives and flying after diving.',
    ways: [
      firstOf('first steps', (title) => `First lesson: ${title}`),
      { words: 'All lessons', path: routes.lessons.path },
    ],
  },
  {
    who: 'If you study alone',
    what: 'Before a deep course: gas to carry, oxygen, narcosis and staged stops, with every number open to the question why.',
    ways: [
      firstOf('deep course', (title) => title),
      { words: 'Watch staged stops on three gases', path: playPath('staged') },
      { words: 'What a gas costs and buys', path: routes.gases.path },
    ],
  },
];
