'use client';

import { Button } from '../../parts/Button';
import { fetchedLater } from '../../parts/fetched-later';
import { Page } from '../../parts/Page';
import { routes } from '../../parts/routes';
import { useOpened } from '../../parts/use-opened';
import styles from './teach.module.css';

const HeldClass = fetchedLater(
  async () => (await import('./HeldClass')).HeldClass,
  <p className={styles.waiting}>Looking for a class…</p>,
);

/** The teacher's page: opens a class and holds it, asks, shows how the answers lie, and runs the engine's over them. */
export function TeachClass() {
  const opened = useOpened();
  return (
    <Page title={routes.teach.name} lead={routes.teach.summary}>
      {opened ? <HeldClass /> : <p className={styles.waiting}>Looking for a class…</p>}
      <noscript>
        <p>A class together needs scripts, which this browser does not run.</p>
      </noscript>
    </Page>
  );
}

/** Where no server can hold a class: what to do instead. */
export function NoServer() {
  return (
    <section aria-labelledby="no-server" className={styles.notice}>
      <h2 id="no-server">A class with phones needs the shop’s own server</h2>
      <p>
        This page does not come from it: it was put on a web space, or is open without a network. On the machine that is
        to hold the class, run <code>npm start</code> and open this page there.
      </p>
      <p>
        Without it, ask for a show of hands: open a lesson, choose <b>Present to a class</b>, and count the hands for
        each answer before you uncover it.
      </p>
      <p>
        <a href={routes.lessons.path}>To the lessons</a>
      </p>
      <Button onClick={() => location.reload()}>Look again</Button>
    </section>
  );
}
