import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { MetadataRoute } from 'next';
import { cautions } from '@/content/cautions';
import icon192 from '@/content/pictures/icon-192.png';
import icon512 from '@/content/pictures/icon-512.png';
import iconMaskable from '@/content/pictures/icon-maskable-512.png';
import { routes } from './parts/routes';

export const dynamic = 'force-static';

/** Lets the site be installed like a program, in its own window. */
export default function manifest(): MetadataRoute.Manifest {
  const paper = onPaper('paper');
  return {
    id: routes.home.path,
    name: routes.home.name,
    short_name: routes.home.name,
    description: `A teaching sandbox for decompression models. ${cautions.general}`,
    lang: 'en-GB',
    start_url: routes.home.path,
    scope: routes.home.path,
    display: 'standalone',
    background_color: paper,
    theme_color: paper,
    categories: ['education'],
    icons: [
      { src: icon192.src, sizes: '192x192', type: 'image/png' },
      { src: icon512.src, sizes: '512x512', type: 'image/png' },
      { src: iconMaskable.src, sizes: '512x512', type: 'image/png', purpose: 'maskable' },
      { src: '/icon.svg', sizes: 'any', type: 'image/svg+xml' },
    ],
  };
}

/** A colour of the light theme, from the one place where colours are kept. */
function onPaper(name: string): string {
  const tokens = readFileSync(join(process.cwd(), 'app/tokens.css'), 'utf8');
  const colour = new RegExp(`--${name}: light-dark\\((#[0-9a-f]{6}),`).exec(tokens)?.[1];
  if (!colour) throw new Error(`app/tokens.css has no colour --${name} with a light and a dark value.`);
  return colour;
}
