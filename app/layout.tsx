import './fonts.css';
import './tokens.css';
import './globals.css';
import type { Metadata } from 'next';
import type { ReactNode } from 'react';
import { cautions } from '@/content/cautions';
import { AsBuilt } from './parts/AsBuilt';
import { layDown } from './parts/as-built';
import styles from './parts/Shell.module.css';
import { glossaryPath } from './parts/lesson-paths';
import { NewerVersionLater } from './offline/NewerVersionLater';
import { Navigation } from './parts/Navigation';
import { noEvalScript } from './parts/no-eval';
import { PreferenceSwitches } from './parts/PreferenceSwitches';
import { ReadyMark } from './parts/ReadyMark';
import { footRoutes, routes } from './parts/routes';
import { Shell } from './parts/Shell';
import { StatusRegion } from './parts/StatusRegion';
import { defaultTheme, themeScript } from './parts/theme';
import { Wordmark } from './parts/Wordmark';

export const metadata: Metadata = {
  title: { default: 'Halftime', template: '%s · Halftime' },
  description: `A teaching sandbox for decompression models. ${cautions.general}`,
};

export default function RootLayout({ children }: { children: ReactNode }) {
  return (
    <html lang="en-GB" data-theme={defaultTheme} suppressHydrationWarning>
      <head>
        <script dangerouslySetInnerHTML={{ __html: noEvalScript + themeScript }} />
      </head>
      <body>
        <a href="#main" className={styles.skip}>
          Skip to the page
        </a>
        <Shell
          head={
            <header className={`${styles.header} unprinted`}>
              <Wordmark />
              <Navigation />
              <PreferenceSwitches />
            </header>
          }
          foot={
            <footer className={styles.footer}>
              <p>{cautions.unknown}</p>
              <p className="unprinted">
                {footRoutes.map(({ path, name }) => (
                  <a key={path} href={path}>
                    {name}
                  </a>
                ))}
              </p>
              <NewerVersionLater />
            </footer>
          }
          unscripted={<AsBuilt name={layDown('unscripted', <Unscripted />)} />}
          status={<StatusRegion />}
        >
          {children}
        </Shell>
        <ReadyMark />
      </body>
    </html>
  );
}

/** For a browser that runs no scripts: what stands still there, and what can be read all the same. */
function Unscripted() {
  return (
    <noscript className={styles.unscripted}>
      <p>
        This browser runs no scripts, so what works dives out stands still here. You can read{' '}
        <a href={routes.lessons.path}>the lessons</a> as text, <a href={glossaryPath}>the glossary</a> and{' '}
        <a href={routes.model.path}>the model</a>.
      </p>
    </noscript>
  );
}
