const UNDO_STEPS = 200;

/** What can be undone and redone of a document, as plain data: moments of any kind, the latest last and the next first. */
export interface History<Past> {
  readonly past: readonly Past[];
  readonly future: readonly Past[];
  /** The name under which changes in a row are under way: they are undone together. */
  readonly joined: string | undefined;
}

/** The name of changes in a row that are typed. */
export const TYPING = 'typing';

export const NO_HISTORY: History<never> = { past: [], future: [], joined: undefined };

/**
 * The history once a document that was at `before` is changed. Changes in a row with the same `joined` name, such as
 * those of one drag or of typing in one box, are one step; undoing, redoing and settling end the row.
 */
export function changed<Past>({ past, joined: under }: History<Past>, before: Past, joined?: string): History<Past> {
  const joins = joined !== undefined && joined === under;
  return { past: joins ? past : [...past, before].slice(-UNDO_STEPS), future: [], joined };
}

interface Step<Past> {
  /** What is shown from now on. */
  readonly moment: Past;
  readonly history: History<Past>;
}

/** One step back from `now`; undefined where there is none. */
export function undone<Past>({ past, future }: History<Past>, now: Past): Step<Past> | undefined {
  if (past.length === 0) return undefined;
  return { moment: past.at(-1)!, history: { past: past.slice(0, -1), future: [now, ...future], joined: undefined } };
}

/** One step forward again from `now`; undefined where there is none. */
export function redone<Past>({ past, future }: History<Past>, now: Past): Step<Past> | undefined {
  const [moment, ...rest] = future;
  if (future.length === 0) return undefined;
  return { moment: moment!, history: { past: [...past, now], future: rest, joined: undefined } };
}
