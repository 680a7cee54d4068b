import type { QrPicture } from '@/lib/files/links/qr';
import { escaped } from '../../pictures/save/svg-text';
import { wrapped } from '../../pictures/save/wrapped';

/** A QR code as a file of its own, with what it opens and the caution under it. */
export function qrSvg({ size, path, caption }: QrPicture, title: string): string {
  const width = 400;
  const lines = [...wrapped(title, 46), ...wrapped(caption, 58)];
  const height = width + 24 + lines.length * 18;
  const text = lines
    .map((line, index) => `<text x="24" y="${width + 12 + index * 18}">${escaped(line)}</text>`)
    .join('');
  return (
    `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${width} ${height}" width="${width}" height="${height}" font-family="sans-serif" font-size="13">` +
    `<rect width="${width}" height="${height}" fill="#fff"/>` +
    `<svg viewBox="0 0 ${size} ${size}" width="${width}" height="${width}" shape-rendering="crispEdges"><path d="${path}" fill="#000"/></svg>` +
    `${text}</svg>\n`
  );
}
