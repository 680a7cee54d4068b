'use client';

import { useRef } from 'react';
import { SaveFormats } from '../../pictures/save/SaveFormats';
import styles from '../curves.module.css';

/** Saves the figure it stands in as a picture. */
export function SaveCurve({ title }: { title: string }) {
  const place = useRef<HTMLSpanElement>(null);
  return (
    <span ref={place} className={styles.save}>
      <SaveFormats
        title={title}
        about={() => 'The model without a dive'}
        figure={() => place.current?.closest('figure')}
      />
    </span>
  );
}
