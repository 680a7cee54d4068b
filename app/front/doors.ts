import { lessonPath, teachPath } from '../parts/lesson-paths';
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

/** What a door has to know of a shipped lesson. */
export interface OfferedLesson {
  readonly slug: string;
  readonly lesson: { readonly level: string; readonly title: string };
}

/** The first lesson of a level, by its title. */
function firstOf(lessons: readonly OfferedLesson[], level: string, words: (title: string) => string): Way {
  const first = lessons.find(({ lesson }) => lesson.level === level);
  if (!first) return { words: 'The lessons', path: routes.lessons.path };
  return { words: words(first.lesson.title), path: lessonPath(first.slug) };
}

/** One door for each kind of reader, with somewhere to begin at once. */
export const doors = (lessons: readonly OfferedLesson[]): readonly [teach: Door, learn: Door, alone: Door] => [
  {
    who: 'If you teach',
    what: 'Show a class or a customer what an instrument shows on the way down and up, and why it suddenly asks for a stop.',
    ways: [
      { words: 'Watch a unit ask for a stop', path: playPath('overstayed') },
      { words: 'A fast ascent, beside a slow one', path: playPath('too-fast') },
      { words: 'One dive, four settings', path: playPath('four-settings') },
      { words: 'Teach a class: everyone answers on a phone', path: teachPath() },
    ],
  },
  {
    who: 'If you are learning',
    what: 'Guess first, then see, then read the working: no-stop times, safety stops, second dives and flying after diving.',
    ways: [
      firstOf(lessons, 'first steps', (title) => `First lesson: ${title}`),
      { words: 'All lessons', path: routes.lessons.path },
    ],
  },
  {
    who: 'If you study alone',
    what: 'Before a deep course: gas to carry, oxygen, narcosis and staged stops, with every number open to the question why.',
    ways: [
      firstOf(lessons, 'deep course', (title) => title),
      { words: 'Watch staged stops on three gases', path: playPath('staged') },
      { words: 'What a gas costs and buys', path: routes.gases.path },
    ],
  },
];
