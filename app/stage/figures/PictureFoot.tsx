import type { ReactNode } from 'react';
import { SavePicture } from './SavePicture';
import styles from '../stage.module.css';

/** The foot of a picture: the table behind it, and the picture as a file. */
export function PictureFoot({ title, children }: { title: string; children: ReactNode }) {
  return (
    <div className={`${styles.foot} unprinted`}>
      {children}
      <SavePicture title={title} />
    </div>
  );
}
