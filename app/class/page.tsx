import '../parts/formulas.css';
import type { Metadata } from 'next';
import { routes } from '../parts/routes';
import { PhoneClass } from './phone/PhoneClass';

export const metadata: Metadata = { title: routes.class.name, description: routes.class.summary };

/** The page of a phone in a class. */
export default function ClassPage() {
  return <PhoneClass />;
}
