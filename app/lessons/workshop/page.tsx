import type { Metadata } from 'next';
import { Page } from '../../parts/Page';
import { loadLessons } from '../load-lessons';
import { readGlossary } from '../read-content';
import { WorkshopLoader } from './WorkshopLoader';

export const metadata: Metadata = { title: 'Workshop', description: 'Make a lesson in the browser, without code.' };

/** Where an instructor makes a lesson. */
export default function WorkshopPage() {
  return (
    <Page
      title="Workshop"
      lead="Make a lesson in the browser, without code. It is kept on this machine, and passed on as a file or a link."
    >
      <WorkshopLoader
        terms={readGlossary().map(({ id }) => ({ id }))}
        lessons={loadLessons().map(({ slug, lesson }) => ({ slug, title: lesson.title }))}
      />
    </Page>
  );
}
