import * as z from 'zod';
import { classStateSchema } from '@/lib/class/class-state';
import type { RecordKind } from '../../keep/kept-record';

const recordSchema = z.object({
  version: z.literal(1),
  /** The teacher's right: whoever has it holds the class. It never leaves this browser but to the server. */
  secret: z.string().regex(/^[A-Za-z0-9_-]{32,64}$/),
  code: z.string().regex(/^[2-9A-Z]{6}$/),
  /** The number of the view that phones had last. */
  shown: z.number().int().min(0),
  /** How far this page has heard, of which server. */
  born: z.string().max(40),
  seq: z.number().int().min(0),
  /** When something was last done or heard, ms since 1970. */
  atMs: z.number().default(0),
  state: classStateSchema,
});
export type KeptClass = Omit<z.infer<typeof recordSchema>, 'version'>;

/** A class as its teacher's page holds it, on this machine alone. */
export const classKind: RecordKind<KeptClass> = {
  name: 'halftime.class.held',
  version: 1,
  schema: recordSchema,
  write: (kept) => ({ version: 1, ...kept }),
  words: {
    unread: 'What was kept of your last class can’t be read here, so another is opened.',
    refused: {
      full: 'There is no room left in this browser to keep the class: a reload of this page loses its answers. Save the results as a file.',
      blocked:
        'This browser does not let the page keep anything: a reload loses the class. Save the results as a file before you leave.',
    },
    fileName: 'halftime-class-unread.json',
  },
};
