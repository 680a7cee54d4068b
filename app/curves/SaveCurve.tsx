'use client';

import { useRef } from 'react';
import { Button } from '../parts/Button';
import { usePreferences } from '../parts/preferences';
import { useStatus } from '../parts/status';
import styles from './curves.module.css';

type Format = 'png' | 'svg';

/** Saves the figure it stands in as a picture, with its title, its sentence, the units and the caution. */
export function SaveCurve({ title }: { title: string }) {
  const place = useRef<HTMLSpanElement>(null);
  const save = async (format: Format) => {
    const figure = place.current?.closest('figure');
    if (!figure) return;
    try {
      const [{ pictureImage, pngOf }, { fileWords, saveFile }] = await Promise.all([import('../desk/keep/picture-image'), import('../parts/save-file')]);
      const image = await pictureImage(figure, 'The model without a dive', usePreferences.getState().units);
      const name = `halftime-${fileWords(title)}.${format}`;
      saveFile(name, format === 'png' ? await pngOf(image) : new Blob([image.svg], { type: 'image/svg+xml' }));
      useStatus.getState().say(`Saved ${name}, with the caution on it.`);
    } catch {
      useStatus.getState().say(`The picture could not be made in this browser.${format === 'png' ? ' Try SVG instead.' : ''}`);
    }
  };
  return (
    <span ref={place} className={styles.save}>
      {(['png', 'svg'] as const).map((format) => (
        <Button key={format} kind="quiet" icon="save" aria-label={`Save ${title} as ${format.toUpperCase()}`} onClick={() => void save(format)}>
          {format.toUpperCase()}
        </Button>
      ))}
    </span>
  );
}
