import '@fontsource-variable/source-sans-3/wght.css';
import '@fontsource-variable/source-sans-3/wght-italic.css';
import '@fontsource-variable/source-serif-4/wght.css';
import '@fontsource-variable/source-serif-4/wght-italic.css';
import './tokens.css';
import './globals.css';
import type { Metadata } from 'next';
import type { ReactNode } from 'react';
import { cautions } from '@/content/cautions';
import styles from './layout.module.css';
import { CautionStrip } from './parts/Caution';
import { Navigation } from './parts/Navigation';
import { PreferenceSwitches } from './parts/PreferenceSwitches';
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
        <script dangerouslySetInnerHTML={{ __html: themeScript }} />
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
          </footer>
        </div>
        <StatusRegion />
      </body>
    </html>
  );
}
