import * as z from 'zod';
import { qrPicture, type QrPicture } from '@/lib/files/links/qr';
import { hereFile } from './here-file';

const hereSchema = z.object({
  inNetwork: z.array(z.url({ protocol: /^http$/ })).max(50),
  maySwitch: z.boolean().default(false),
});

export interface Here {
  /** Addresses at which others in the network reach this site, likeliest first; none where it is open to one machine alone. */
  readonly inNetwork: readonly string[];
  /** The first of them as a code to photograph. */
  readonly qr: QrPicture | undefined;
  /** Whether this page may open it to the network and close it: only one on the server’s own machine. */
  readonly maySwitch: boolean;
}

/** What the server says of itself; undefined where the site is served by another, or kept and read without one. */
export function hereOfServer(): Promise<Here | undefined> {
  return told({});
}

/** Has the server open itself to the network, or close; undefined where it does not. */
export function openToNetwork(open: boolean): Promise<Here | undefined> {
  return told({ method: 'POST', headers: { 'content-type': 'application/json' }, body: JSON.stringify({ open }) });
}

async function told(request: RequestInit): Promise<Here | undefined> {
  const answer = await fetch(`/${hereFile}`, { cache: 'no-store', ...request }).catch(() => undefined);
  if (!answer?.ok || !answer.headers.get('content-type')?.includes('json')) return undefined;
  const read = hereSchema.safeParse(await answer.json().catch(() => undefined));
  if (!read.success) return undefined;
  const { inNetwork, maySwitch } = read.data;
  const [first] = inNetwork;
  const qr = first === undefined ? undefined : qrPicture(first);
  return { inNetwork, maySwitch, qr: qr?.ok ? qr.value : undefined };
}
