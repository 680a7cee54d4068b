import '../../parts/formulas.css';
import type { Metadata } from 'next';
import { Page } from '../../parts/Page';
import { loadLessons } from '../load-lessons';
import { readGlossary } from '../read-content';
import { ClassResultsLoader } from './ClassResultsLoader';

export const metadata: Metadata = {
  title: 'Results of a class',
  description: 'Answers that learners handed in, question by question.',
};

/** Where whoever teaches opens what learners handed in. */
export default function ClassResultsPage() {
  return (
    <Page
      title="Results of a class"
      lead="Open what learners handed in, as many as you like, and see where they stand, question by question. Nothing leaves this machine."
    >
      <ClassResultsLoader
        terms={readGlossary().map(({ id }) => ({ id }))}
        lessons={loadLessons().map(({ slug, lesson }) => ({ slug, title: lesson.title }))}
      />
    </Page>
  );
}
