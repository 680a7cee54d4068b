'use client';

import type { Path, Value } from '@/lib/lesson/edit-lesson';
import type { LessonFault } from '@/lib/lesson/checking/fault';
import { useSaidOncePaused } from '../../../parts/said-once-paused';
import styles from '../workshop.module.css';

/** What a form needs to change the lesson and to say what is wrong with it. */
export interface Editing {
  readonly faults: readonly LessonFault[];
  readonly set: (path: Path, value: Value | undefined) => void;
  readonly add: (path: Path, value: Value) => void;
  readonly move: (path: Path, from: number, to: number) => void;
  readonly rename: (path: Path, before: string, after: string) => void;
  /** Takes one part away and puts another in its place, as one change. */
  readonly exchange: (path: Path, before: string | undefined, after: string, value: Value) => void;
}

function samePath(one: Path, other: readonly (string | number)[]): boolean {
  return one.length === other.length && one.every((key, i) => String(key) === String(other[i]));
}

/** What is wrong at exactly this place; read out, by the name of its control, once typing pauses. */
export function Faults({ path, editing, id, of }: { path: Path; editing: Editing; id?: string; of?: string }) {
  const own = editing.faults.filter((fault) => samePath(path, fault.path)).map(({ what, mend }) => `${what} ${mend}`);
  const { key, role } = useSaidOncePaused(own.length > 0 ? own.join(' ') : undefined);
  return (
    <div key={key} className={styles.faults} role={role}>
      {of !== undefined && own.length > 0 && <span className="spoken">{of}: </span>}
      <div id={id}>
        {own.map((words, index) => (
          <p key={index}>{words}</p>
        ))}
      </div>
    </div>
  );
}

export function isWrong(path: Path, editing: Editing): true | undefined {
  return editing.faults.some((fault) => samePath(path, fault.path)) || undefined;
}
