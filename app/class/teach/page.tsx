import '../../parts/formulas.css';
import type { Metadata } from 'next';
import { routes } from '../../parts/routes';
import { TeachClass } from './TeachClass';

export const metadata: Metadata = { title: routes.teach.name, description: routes.teach.summary };

/** The teacher's page of a class. */
export default function TeachPage() {
  return <TeachClass />;
}
