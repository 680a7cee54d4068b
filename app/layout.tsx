import type { Metadata } from 'next';
import type { ReactNode } from 'react';
import { cautions } from '@/content/cautions';

export const metadata: Metadata = { title: 'Halftime' };

export default function RootLayout({ children }: { children: ReactNode }) {
  return (
    <html lang="en-GB">
      <body>
        <main>{children}</main>
        <footer>{cautions.general}</footer>
      </body>
    </html>
  );
}
