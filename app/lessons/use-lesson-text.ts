import { useEffect, useState } from 'react';
import { yamlPath } from '../parts/lesson-paths';

/** The text of a lesson, fetched from the shelf unless it is here as `own`; words where it can't be, which end with `mend`. */
export function useLessonText(
  slug: string,
  own: string | undefined,
  mend: string,
): { readonly text?: string; readonly why?: string } {
  const [got, setGot] = useState<{ readonly text?: string; readonly why?: string }>({});
  useEffect(() => {
    if (own !== undefined) return undefined;
    let here = true;
    const why = `The lesson can’t be fetched just now. ${mend}`;
    fetch(yamlPath(slug))
      .then(async (answer) => (answer.ok ? { text: await answer.text() } : { why }))
      .catch(() => ({ why }))
      .then((made) => here && setGot(made));
    return () => {
      here = false;
    };
  }, [slug, own, mend]);
  return own === undefined ? got : { text: own };
}
