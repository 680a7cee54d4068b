import type { ReactNode } from 'react';
import { createRoot } from 'react-dom/client';
import { DIVE_PLACE } from '@/lib/files/links/dive-page';
import { usePreferences } from '../parts/preferences';
import { isTheme } from '../parts/theme';
import { DiveAlone } from './DiveAlone';
import { openPage } from './opened-page';

/** What else a page may carry than a dive, told by how it begins; drawn where it does. */
type Besides = (packed: string, inFile: boolean) => ReactNode | undefined;

/** What a page of its own runs: it reads what is in it, or behind its #, and shows it in place of what stood there. */
export function showPage(besides: Besides): void {
  const { theme, units } = document.documentElement.dataset;
  if (isTheme(theme)) usePreferences.getState().setTheme(theme);
  if (units === 'imperial') usePreferences.getState().setUnits('imperial');

  const own = document.getElementById(DIVE_PLACE)?.textContent.trim() ?? '';
  const inFile = own !== '';
  const root = createRoot(document.getElementById('dive')!);
  const show = () => {
    const packed = own || location.hash;
    root.render(besides(packed, inFile) ?? <DiveAlone key={packed} opened={openPage(packed, inFile)} />);
  };
  show();
  if (!inFile) window.addEventListener('hashchange', show);
}
