'use client';

import { useState } from 'react';
import { builtTexts } from './built-texts';

/** A text that `layDown` drew when the site was built. In the browser it stays as it stands in the page. */
export function AsBuilt({ name, className }: { name: string; className?: string | undefined }) {
  const [html] = useState(() =>
    typeof document === 'undefined' ? drawn(name) : (document.getElementById(name)?.innerHTML ?? ''),
  );
  return <div id={name} className={className} dangerouslySetInnerHTML={{ __html: html }} suppressHydrationWarning />;
}

function drawn(name: string): string {
  const html = builtTexts().get(name);
  if (html === undefined) throw new Error(`No text was laid down under the name ${name}.`);
  return html;
}
