'use client';

import { useCallback, useState } from 'react';
import { Button } from '../../parts/Button';
import { usePreferences } from '../../parts/preferences';
import { useStatus } from '../../parts/status';
import { useDeskStore } from '../desk-context';
import { diveTitle } from './dive-title';
import styles from './keep.module.css';

type Format = 'png' | 'svg';

/** Saves the figure it stands in as a picture with its title, units and caution; nothing where the figure is all words. */
export function SavePicture({ title }: { title: string }) {
  const store = useDeskStore();
  /** The figure around, if it is drawn. */
  const [figure, setFigure] = useState<HTMLElement>();
  const place = useCallback((element: HTMLSpanElement | null) => {
    const around = element?.closest('figure');
    setFigure(around?.querySelector('[data-picture] > div > svg') ? around : undefined);
  }, []);

  const save = async (figure: HTMLElement, format: Format) => {
    const { script, scene } = store.getState();
    const { units } = usePreferences.getState();
    try {
      const [{ pictureImage, pngOf }, { fileWords, saveFile }] = await Promise.all([import('./picture-image'), import('../../parts/save-file')]);
      const image = await pictureImage(figure, diveTitle(script, scene, units), units);
      const name = `halftime-${fileWords(title)}.${format}`;
      saveFile(name, format === 'png' ? await pngOf(image) : new Blob([image.svg], { type: 'image/svg+xml' }));
      useStatus.getState().say(`Saved ${name}, with the caution on it.`);
    } catch {
      useStatus.getState().say(`The picture could not be made in this browser.${format === 'png' ? ' Try SVG instead.' : ''}`);
    }
  };

  return (
    <span ref={place} className={styles.savePicture}>
      {figure &&
        (['png', 'svg'] as const).map((format) => (
          <Button key={format} kind="quiet" icon="save" aria-label={`Save ${title} as ${format.toUpperCase()}`} onClick={() => void save(figure, format)}>
            {format.toUpperCase()}
          </Button>
        ))}
    </span>
  );
}
