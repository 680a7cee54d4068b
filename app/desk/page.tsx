import type { Metadata } from 'next';
import { routes } from '../parts/routes';
import { Desk } from './Desk';
import { offerScript } from './tour/offer-script';
import styles from './desk.module.css';

export const metadata: Metadata = { title: routes.desk.name, description: routes.desk.summary };

export default function DeskPage() {
  return (
    <>
      <h1 className="spoken">Desk</h1>
      <script dangerouslySetInnerHTML={{ __html: offerScript }} />
      <noscript>
        <p className={styles.unscripted}>
          The desk works dives out as you change them, which needs scripts, and this browser runs none. <a href={routes.lessons.path}>The lessons</a> can be read without,
          and so can <a href={routes.model.path}>the model</a>.
        </p>
      </noscript>
      <Desk />
    </>
  );
}
