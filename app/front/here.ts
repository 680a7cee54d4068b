import * as z from 'zod';
import { qrPicture, type QrPicture } from '@/lib/files/links/qr';
import { hereFile } from './here-file';

const hereSchema = z.object({ inNetwork: z.array(z.url({ protocol: /^http$/ })).max(50) });

export interface Here {
  /** Addresses at which others in the network reach this site, likeliest first; none where it is open to one machine alone. */
  readonly inNetwork: readonly string[];
  /** The first of them as a code to photograph. */
  readonly qr: QrPicture | undefined;
}

/** What the server says of itself; undefined where the site is served by another, or kept and read without one. */
export async function hereOfServer(): Promise<Here | undefined> {
  const answer = await fetch(`/${hereFile}`, { cache: 'no-store' }).catch(() => undefined);
  if (!answer?.ok || !answer.headers.get('content-type')?.includes('json')) return undefined;
  const read = hereSchema.safeParse(await answer.json().catch(() => undefined));
  if (!read.success) return undefined;
  const [first] = read.data.inNetwork;
  const qr = first === undefined ? undefined : qrPicture(first);
  return { inNetwork: read.data.inNetwork, qr: qr?.ok ? qr.value : undefined };
}
