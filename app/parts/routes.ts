export interface Route {
  path: string;
  name: string;
  /** One line for a person who has not been there. */
  summary: string;
  /** Only screens that exist are offered. */
  open: boolean;
  /** Led to from the foot of every page, and not from the navigation. */
  atFoot?: boolean;
}

/** Every screen of the app, in the order a person meets them. Paths are written here and nowhere else. */
export const routes = {
  home: { path: '/', name: 'Halftime', summary: 'The front door.', open: true },
  desk: {
    path: '/desk/',
    name: 'Desk',
    summary: 'Script a dive, run it or steer it by hand, and watch the model.',
    open: true,
  },
  bring: {
    path: '/bring/',
    name: 'Bring a dive',
    summary: 'Read a recorded dive, mend it by consent, and lay the instrument beside the model.',
    open: true,
  },
  lessons: {
    path: '/lessons/',
    name: 'Lessons',
    summary: 'Predict, see, and read the working, one question at a time.',
    open: true,
  },
  curves: {
    path: '/curves/',
    name: 'Curves',
    summary: 'No-stop times, limits and half-times, without a dive.',
    open: true,
  },
  gases: { path: '/gases/', name: 'Gases', summary: 'Oxygen, narcosis, density and how much to carry.', open: true },
  bench: {
    path: '/bench/',
    name: 'Bench',
    summary: 'Pressure-chamber runs and what an instrument should show.',
    open: true,
  },
  evidence: {
    path: '/evidence/',
    name: 'Evidence',
    summary: 'Every check against published figures, worked out as you read.',
    open: true,
  },
  model: {
    path: '/model/',
    name: 'Model',
    summary: 'What is computed, from which sources, and what is left out.',
    open: true,
  },
  class: {
    path: '/class/',
    name: 'Join a class',
    summary: 'Answer with a class from your phone, by the code on the wall.',
    open: true,
    atFoot: true,
  },
  teach: {
    path: '/class/teach/',
    name: 'Teach a class',
    summary: 'Ask a room full of phones: everyone predicts, then everyone sees.',
    open: true,
    atFoot: true,
  },
  access: {
    path: '/access/',
    name: 'By keys, by ear, enlarged',
    summary: 'What works without sight, without a mouse and enlarged, and what does not.',
    open: true,
    atFoot: true,
  },
  licences: {
    path: '/licences/',
    name: 'Licences',
    summary: 'What the app is made with, and under which terms.',
    open: true,
    atFoot: true,
  },
} as const satisfies Record<string, Route>;

/** The page of one dive, behind its #: framed by others, and the beginning of a dive saved as a page of its own. */
export const embedPath = '/embed/';

/** The desk with a dive on it, by what a link to the dive carries behind its #. */
export function deskWith(fragment: string): string {
  return `${routes.desk.path}#${fragment}`;
}

const everyRoute: readonly Route[] = Object.values(routes);

/** What the navigation lists: the screens that are open, less the front door, which the name in the header leads to. */
export const openRoutes = everyRoute.filter(({ open, path, atFoot }) => open && path !== '/' && !atFoot);

/** What the foot of every page leads to. */
export const footRoutes = everyRoute.filter(({ open, atFoot }) => open && atFoot);

/** True on the screen itself and on the pages under it, such as one lesson; the last slash may be missing. */
export function isWithin(here: string, path: string): boolean {
  return `${here}/`.replace(/\/+$/, '/').startsWith(path);
}
