import { createRoot } from 'react-dom/client';
import { DIVE_PLACE } from '@/lib/files/links/dive-page';
import { usePreferences } from '../parts/preferences';
import { isTheme } from '../parts/theme';
import { DiveAlone } from './DiveAlone';
import { openPage } from './opened-page';

/** What the page of one dive runs: it reads the dive in it, or behind its #, and shows it in place of what stood there. */
const { theme, units } = document.documentElement.dataset;
if (isTheme(theme)) usePreferences.getState().setTheme(theme);
if (units === 'imperial') usePreferences.getState().setUnits('imperial');

const inFile = document.getElementById(DIVE_PLACE)?.textContent.trim() ?? '';
const root = createRoot(document.getElementById('dive')!);
const show = () =>
  root.render(<DiveAlone key={location.hash} opened={openPage(inFile || location.hash, inFile !== '')} />);
show();
if (inFile === '') window.addEventListener('hashchange', show);
