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
