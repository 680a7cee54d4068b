import type { Metadata } from 'next';
import { CHECK_GROUPS } from '@/lib/evidence/all';
import { Page } from '../parts/Page';
import { routes } from '../parts/routes';
import { Evidence } from './Evidence';

export const metadata: Metadata = { title: routes.evidence.name, description: routes.evidence.summary };

export default function EvidencePage() {
  return (
    <Page
      title="Evidence"
      lead="Every figure below is worked out by this page’s own engine, in your browser, and held against one from outside: a printed table, a standard, a worked example or a general-purpose solver. Each says where it is from, and whether it was read there or recalled from memory."
    >
      <Evidence groups={CHECK_GROUPS.map(({ id, title, about }) => ({ id, title, about }))} />
    </Page>
  );
}
