import './fonts.css';
import './tokens.css';
import './globals.css';
import type { Metadata } from 'next';
import type { ReactNode } from 'react';
import { cautions } from '@/content/cautions';
import styles from './layout.module.css';
import { NewerVersion } from './offline/NewerVersion';
import { CautionStrip } from './parts/Caution';
import { Navigation } from './parts/Navigation';
import { noEvalScript } from './parts/no-eval';
import { PreferenceSwitches } from './parts/PreferenceSwitches';
import { footRoutes } from './parts/routes';
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
        <div className={styles.shell}>
          <CautionStrip />
          <header className={`${styles.header} unprinted`}>
            <Wordmark />
            <Navigation />
            <PreferenceSwitches />
          </header>
          <main id="main" tabIndex={-1}>
            {children}
          </main>
          <footer className={styles.footer}>
            <p>{cautions.unknown}</p>
            <p className="unprinted">
              {footRoutes.map(({ path, name }) => (
                <a key={path} href={path}>
                  {name}
                </a>
              ))}
            </p>
            <NewerVersion />
          </footer>
        </div>
        <StatusRegion />
      </body>
    </html>
  );
}
