import { cautions } from '@/content/cautions';
import type { Term } from '@/lib/lesson/glossary';
import type { KnownNames } from '@/lib/lesson/questions/known-names';
import { PICTURE_IDS } from '../pictures/picture-ids';
import { READING_IDS } from './reading-ids';
import { routes } from '../parts/routes';
import { TELLS } from './what-tells';

/** The names a lesson may use, each from where it is kept. */
export function knownNames(glossary: readonly Pick<Term, 'id'>[]): KnownNames {
  return {
    pictures: PICTURE_IDS,
    readings: READING_IDS,
    tells: TELLS,
    cautions: Object.keys(cautions),
    terms: glossary.map(({ id }) => id),
    pages: Object.keys(routes),
  };
}
