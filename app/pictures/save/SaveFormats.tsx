'use client';

import { Button } from '../../parts/Button';
import { usePreferences } from '../../parts/preferences';
import { useStatus } from '../../parts/status';

type Format = 'png' | 'svg';

interface SaveFormatsProps {
  /** What the picture is called. */
  title: string;
  /** What it is of, to stand over it. */
  about: () => string;
  /** The figure it is in, once a button is pressed. */
  figure: () => HTMLElement | null | undefined;
}

/** Saves a figure as a picture with its title, its sentence, the units and the caution, in the format chosen. */
export function SaveFormats({ title, about, figure }: SaveFormatsProps) {
  const save = async (format: Format) => {
    const drawn = figure();
    if (!drawn) return;
    try {
      const [{ pictureImage, pngOf }, { fileWords, saveFile }] = await Promise.all([
        import('./picture-image'),
        import('../../parts/save-file'),
      ]);
      const image = await pictureImage(drawn, about(), usePreferences.getState().units);
      const name = `halftime-${fileWords(title)}.${format}`;
      saveFile(name, format === 'png' ? await pngOf(image) : new Blob([image.svg], { type: 'image/svg+xml' }));
      useStatus.getState().say(`Saved ${name}, with the caution on it.`);
    } catch {
      useStatus
        .getState()
        .say(`The picture could not be made in this browser.${format === 'png' ? ' Try SVG instead.' : ''}`);
    }
  };
  return (['png', 'svg'] as const).map((format) => (
    <Button
      key={format}
      kind="quiet"
      icon="save"
      aria-label={`Save ${title} as ${format.toUpperCase()}`}
      onClick={() => void save(format)}
    >
      {format.toUpperCase()}
    </Button>
  ));
}
