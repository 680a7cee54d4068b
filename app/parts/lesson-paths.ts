import { routes } from './routes';

/** Addresses under the lessons. */
export const glossaryPath = `${routes.lessons.path}glossary/`;
/** The terms as data, for a lesson that opens one in place. */
export const termsPath = `${glossaryPath}terms.json`;
export const workshopPath = `${routes.lessons.path}workshop/`;

/** Where whoever teaches opens what was handed in. */
export const classResultsPath = `${routes.lessons.path}results/`;

export function lessonPath(slug: string, step?: string): string {
  return `${routes.lessons.path}${slug}/${step === undefined ? '' : `#${step}`}`;
}

export const textPath = (slug: string) => `${lessonPath(slug)}text/`;
export const sheetPath = (slug: string) => `${lessonPath(slug)}sheet/`;
export const keyPath = (slug: string) => `${lessonPath(slug)}key/`;
export const yamlPath = (slug: string) => `${lessonPath(slug)}lesson.yaml`;

const LESSON_PAGE = new RegExp(`^${routes.lessons.path}\\d\\d-[a-z0-9-]+/?$`);
/** Whether an address is that of a lesson being taken; its texts and sheets for paper have others. */
export const isLessonPage = (here: string) => LESSON_PAGE.test(here);
/** What a lesson asks a class, and what is right: as data, for phones and for the teacher. */
export const asksPath = (slug: string) => `${lessonPath(slug)}asks.json`;
export const answersPath = (slug: string) => `${lessonPath(slug)}answers.json`;
/** What a lesson from the workshop is called in a class. */
export const OWN_IN_CLASS = 'own';
/** Teaching one lesson, or the dive on the desk, to a class. */
export const teachPath = (lesson?: string) => `${routes.teach.path}${lesson === undefined ? '' : `#lesson=${lesson}`}`;
/** The shipped lessons by name, as data. */
export const shelfPath = `${routes.lessons.path}shelf.json`;
