'use client';

import { usePathname } from 'next/navigation';
import styles from './Navigation.module.css';
import { openRoutes } from './routes';

/** The way to every open screen; the one you are on is marked. */
export function Navigation() {
  const here = usePathname();
  return (
    <nav aria-label="Screens" className={styles.navigation}>
      <ul>
        {openRoutes.map(({ path, name }) => (
          <li key={path}>
            <a href={path} aria-current={isWithin(here, path) ? 'page' : undefined}>
              {name}
            </a>
          </li>
        ))}
      </ul>
    </nav>
  );
}

/** True on the screen itself and on the pages under it, such as one lesson; the last slash may be missing. */
function isWithin(here: string, path: string): boolean {
  return `${here}/`.replace(/\/+$/, '/').startsWith(path);
}
