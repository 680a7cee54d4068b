import { dashOf, shapeOf } from './curve-looks';
import plot from './plot.module.css';
import styles from '../curves.module.css';

/** A piece of a curve, to stand beside its name. */
export function CurveSample({
  look,
  bare = false,
  dotOnly = false,
}: {
  look: number;
  bare?: boolean;
  dotOnly?: boolean;
}) {
  return (
    <svg viewBox="0 0 52 18" className={plot.key} aria-hidden="true" focusable="false">
      {!dotOnly && (
        <path d="M1,9H51" strokeDasharray={dashOf(look)} className={`${plot.curve} ${plot.ink} ${plot.usual}`} />
      )}
      {!bare && <path d={shapeOf(look)} transform="translate(26,9)" className={dotOnly ? plot.openDot : plot.mark} />}
    </svg>
  );
}

export interface KeyEntry {
  readonly name: string;
  readonly look: number;
  readonly bare?: boolean;
  readonly dotOnly?: boolean;
}

/** What each curve of a plot is. */
export function CurveKey({ entries }: { entries: readonly KeyEntry[] }) {
  return (
    <ul className={styles.key} aria-label="Curves in this picture">
      {entries.map(({ name, ...sample }) => (
        <li key={`${name} ${sample.look}`}>
          <CurveSample {...sample} />
          {name}
        </li>
      ))}
    </ul>
  );
}
