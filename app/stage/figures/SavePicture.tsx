'use client';

import { memo, useCallback, useState } from 'react';
import { usePreferences } from '../../parts/preferences';
import { useDeskStore } from '../desk-context';
import { diveTitle } from '../../pictures/dive-title';
import { SaveFormats } from '../../pictures/save/SaveFormats';
import styles from '../stage.module.css';

/** Saves the figure it stands in as a picture; nothing where the figure is all words. */
export const SavePicture = memo(function SavePicture({ title }: { title: string }) {
  const store = useDeskStore();
  /** The figure around, if it is drawn. */
  const [figure, setFigure] = useState<HTMLElement>();
  const place = useCallback((element: HTMLSpanElement | null) => {
    const around = element?.closest('figure');
    setFigure(around?.querySelector('[data-picture] > div > svg') ? around : undefined);
  }, []);
  const about = () => {
    const { script, scene } = store.getState();
    return diveTitle(script, scene, usePreferences.getState().units);
  };
  return (
    <span ref={place} className={styles.savePicture}>
      {figure && <SaveFormats title={title} about={about} figure={() => figure} />}
    </span>
  );
});
