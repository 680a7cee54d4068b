import type { Metadata } from 'next';
import { earlyPressScript } from '../parts/early-press-script';
import { routes } from '../parts/routes';
import { Desk } from './Desk';
import { offerScript } from './tour/offer-script';

export const metadata: Metadata = { title: routes.desk.name, description: routes.desk.summary };

export default function DeskPage() {
  return (
    <>
      <h1 className="spoken">Desk</h1>
      <script dangerouslySetInnerHTML={{ __html: offerScript + earlyPressScript }} />
      <Desk />
    </>
  );
}
