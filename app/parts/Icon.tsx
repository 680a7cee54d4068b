import { memo } from 'react';
import styles from './Icon.module.css';

/** Line drawings on a 20 × 20 grid. */
const drawings = {
  caution: (
    <>
      <path d="M10 2.5 18.5 17h-17z" />
      <path d="M10 8v4.2M10 14.4v.2" />
    </>
  ),
  sun: (
    <>
      <circle cx="10" cy="10" r="3.4" />
      <path d="M10 1.8v2.4M10 15.8v2.4M1.8 10h2.4M15.8 10h2.4M4.2 4.2l1.7 1.7M14.1 14.1l1.7 1.7M4.2 15.8l1.7-1.7M14.1 5.9l1.7-1.7" />
    </>
  ),
  moon: <path d="M16.5 12.2A7 7 0 0 1 7.8 3.5a7 7 0 1 0 8.7 8.7z" />,
  screen: (
    <>
      <rect x="2.5" y="3.5" width="15" height="10" rx="1" />
      <path d="M7 17h6M10 13.5V17" />
    </>
  ),
  more: <path d="M4.5 10h.2M9.9 10h.2M15.3 10h.2" strokeWidth={3} />,
  rooms: <path d="M3.5 5h13M3.5 10h13M3.5 15h13" />,
  hold: <path d="M5 3v14M5 4h9.5l-2.5 3.5 2.5 3.5H5" />,
  close: <path d="m5 5 10 10M15 5 5 15" />,
  chevron: <path d="m7 4 6 6-6 6" />,
  up: <path d="m4 13 6-6 6 6" />,
  down: <path d="m4 7 6 6 6-6" />,
  plus: <path d="M10 4v12M4 10h12" />,
  minus: <path d="M4 10h12" />,
  play: <path d="M6 3.5v13l10.5-6.5z" />,
  pause: <path d="M7 4v12M13 4v12" />,
  stepBack: <path d="M15 4.5v11L7 10zM5 4.5v11" />,
  stepOn: <path d="M5 4.5v11l8-5.5zM15 4.5v11" />,
  eventBack: (
    <>
      <path d="M12 4.5v11L5 10z" />
      <circle cx="16" cy="10" r="1.4" />
    </>
  ),
  eventOn: (
    <>
      <path d="M8 4.5v11l7-5.5z" />
      <circle cx="4" cy="10" r="1.4" />
    </>
  ),
  undo: <path d="M7.5 3.5 4 7l3.5 3.5M4 7h7.5a4.5 4.5 0 0 1 0 9H8" />,
  redo: <path d="M12.5 3.5 16 7l-3.5 3.5M16 7H8.5a4.5 4.5 0 0 0 0 9H12" />,
  print: (
    <>
      <path d="M6 7V3h8v4M6 14H3.5V7.5h13V14H14" />
      <path d="M6 11.5h8V17H6z" />
    </>
  ),
  save: <path d="M10 3v9M6.5 8.5 10 12l3.5-3.5M3.5 13v3.5h13V13" />,
  link: (
    <path d="M8.5 11.5a3 3 0 0 0 4.3 0l2.7-2.7a3 3 0 0 0-4.3-4.3l-1 1M11.5 8.5a3 3 0 0 0-4.3 0l-2.7 2.7a3 3 0 0 0 4.3 4.3l1-1" />
  ),
  why: (
    <>
      <circle cx="10" cy="10" r="7.5" />
      <path d="M7.8 7.8a2.3 2.3 0 1 1 3.2 2.1c-.7.3-1 .8-1 1.6M10 14v.2" />
    </>
  ),
  covered: (
    <>
      <path d="M2 10s3-5 8-5 8 5 8 5-3 5-8 5-8-5-8-5z" />
      <path d="m3.5 16.5 13-13" />
    </>
  ),
  table: (
    <>
      <rect x="2.5" y="3.5" width="15" height="13" />
      <path d="M2.5 8h15M2.5 12.2h15M8 3.5v13" />
    </>
  ),
} as const;

export type IconName = keyof typeof drawings;

/** A drawing that only accompanies a word or a label: screen readers pass over it. */
export const Icon = memo(function Icon({ name }: { name: IconName }) {
  return (
    <svg className={styles.icon} viewBox="0 0 20 20" aria-hidden="true" focusable="false">
      {drawings[name]}
    </svg>
  );
});
