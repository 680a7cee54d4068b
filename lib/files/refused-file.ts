import type { FileRefusal, Recording } from './records/record';

/** Thrown inside a reader to give up on a file; each reader turns it into a refusal at its own door. */
export class RefusedFile extends Error {
  constructor(
    readonly what: string,
    readonly mend: string,
  ) {
    super(what);
  }
}

/** The refusal of what was thrown; throws again what is not about the file. */
export function refusalOf(thrown: unknown, rescued: readonly Recording[] = []): FileRefusal {
  if (!(thrown instanceof RefusedFile)) throw thrown;
  return { ok: false, what: thrown.what, mend: thrown.mend, rescued };
}

export const CANCELLED = new RefusedFile('Reading was stopped.', 'Open the file again to read it.');

/** The error for a file of more megabytes than are read. */
export function tooLarge(megabytes: number): RefusedFile {
  return new RefusedFile(`The file is larger than ${megabytes} MB.`, 'Split it, or export fewer dives at a time.');
}

/** The error for a file of more samples than are read. */
export function tooManySamples(samples: number): RefusedFile {
  return new RefusedFile(
    `The file holds more than ${samples.toLocaleString('en-GB')} samples.`,
    'Split it, or export it with fewer samples a minute.',
  );
}
