import { useEffect, type ReactNode } from 'react';
import { cautions } from '@/content/cautions';
import { ButtonLink } from '../Button';
import { CautionStrip } from '../Caution';
import { PreferenceSwitches } from '../PreferenceSwitches';
import { StatusRegion } from '../StatusRegion';
import styles from './alone-page.module.css';

interface AlonePageProps {
  title: string;
  /** What the title belongs to, over it. */
  of?: string | undefined;
  /** Where the same stands on the site, if the page is part of it. */
  onSite?: string | undefined;
  children: ReactNode;
  /** Above the words that end every such page. */
  foot?: ReactNode;
}

/** A page that stands by itself, in a file or in a frame: nothing of the site about it but the caution and the switches. */
export function AlonePage({ title, of, onSite, children, foot }: AlonePageProps) {
  useEffect(() => {
    document.title = `${title} · Halftime`;
    document.documentElement.dataset['ready'] = '';
  }, [title]);
  return (
    <>
      <CautionStrip />
      <main className={styles.page}>
        <header className={styles.head}>
          <div>
            {of !== undefined && <p>{of}</p>}
            <h1>{title}</h1>
          </div>
          <PreferenceSwitches />
        </header>
        {children}
        <footer className={styles.foot}>
          {foot}
          <p>{cautions.unknown}</p>
          {onSite !== undefined && (
            <p className="unprinted">
              <ButtonLink href={onSite} newWindow>
                Open in Halftime
              </ButtonLink>
            </p>
          )}
        </footer>
      </main>
      <StatusRegion />
    </>
  );
}

/** In its place where there is nothing to show: what is wrong, and how to mend it. */
export function NothingAlone({ title, what, mend }: { title: string; what: string; mend: string }) {
  useEffect(() => {
    document.documentElement.dataset['ready'] = '';
  }, []);
  return (
    <>
      <CautionStrip />
      <main className={styles.page}>
        <h1>{title}</h1>
        <p role="alert" className={styles.refused}>
          {what} {mend}
        </p>
      </main>
    </>
  );
}
