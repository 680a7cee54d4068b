import type { Metadata } from 'next';
import { routes } from '../parts/routes';
import { Atlas } from './Atlas';

export const metadata: Metadata = { title: routes.curves.name, description: routes.curves.summary };

export default function CurvesPage() {
  return <Atlas />;
}
