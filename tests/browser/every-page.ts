import {
  classResultsPath,
  glossaryPath,
  keyPath,
  lessonPath,
  sheetPath,
  textPath,
  workshopPath,
} from '@/app/parts/lesson-paths';
import { footRoutes, openRoutes, routes } from '@/app/parts/routes';

/** The table under the gases. */
export const tablePath = `${routes.gases.path}table/`;

/** A lesson that has every kind of step. */
export const LESSON = '04-no-stop-time';

/** Every kind of page there is, by name: each screen, each way a lesson is shown, and the page for an address that leads nowhere. */
export const everyPage: readonly { readonly name: string; readonly path: string }[] = [
  ...[routes.home, ...openRoutes, ...footRoutes],
  { name: 'Teaching table', path: tablePath },
  { name: 'A lesson', path: lessonPath(LESSON) },
  { name: 'A lesson as text', path: textPath(LESSON) },
  { name: 'A student’s sheet', path: sheetPath(LESSON) },
  { name: 'An answer key', path: keyPath(LESSON) },
  { name: 'Glossary', path: glossaryPath },
  { name: 'Workshop', path: workshopPath },
  { name: 'Results of a class', path: classResultsPath },
  { name: 'An address that leads nowhere', path: '/desk/nowhere/' },
];
