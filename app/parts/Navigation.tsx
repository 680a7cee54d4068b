'use client';

import styles from './Navigation.module.css';
import { isWithin, openRoutes } from './routes';
import { useHere } from './use-here';

/** The way to every open screen; the one you are on is marked. */
export function Navigation() {
  const here = useHere();
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
