import type { ReactNode } from 'react';
import { printDayClock } from '@/lib/dive/day-clock';
import type { PictureProps } from '../picture-props';
import { PointerTip } from '../hand/PointerTip';
import { usePointed, type Pointed } from '../hand/use-pointed';
import { Plate } from './Plate';
import { columnAt, type TimeFrame } from './time-picture';
import { TimeCursor } from './TimeCursor';
import styles from '../pictures.module.css';

/** A moment a pointer is at: its pixel column, the sample that stands for it, and the place in the plot. */
interface PointedMoment extends Pointed {
  readonly column: number;
  readonly sample: number;
}

/** What is told beside a pointer; the time heads it unless it has a title of its own. */
interface Tip {
  readonly lines: readonly ReactNode[];
  readonly title?: string;
  /** Half way down unless it says where. */
  readonly y?: number;
}

interface TimePlotProps
  extends Pick<PictureProps, 'width' | 'height'>, Partial<Pick<PictureProps, 'cursorS' | 'onCursor'>> {
  frame: TimeFrame;
  className?: string | undefined;
  /** What stays while the cursor moves. */
  children: ReactNode;
  /** Words in the plot, which the cursor goes behind. */
  words?: ReactNode;
  /** What stands where the cursor is, told where along the plot that is; not drawn where the cursor is out of it. */
  atCursor?: (x: number) => ReactNode;
  /** What a pointer is told; undefined where there is nothing to tell. */
  tip: (at: PointedMoment) => Tip | undefined;
  /** Marks what is pointed at; a line through the plot unless given. */
  mark?: (at: PointedMoment) => ReactNode;
}

/** A plot over the time of a dive: the sheet, the one time cursor where there is one, and what a pointer is told. Pressing moves the cursor. */
export function TimePlot(props: TimePlotProps) {
  const { frame, width, height, cursorS, onCursor, className, children, words, atCursor, tip, mark } = props;
  const { margin, inner, x, columns, timeline } = frame;
  const { pointed, handlers } = usePointed(margin, width, onCursor && ((at) => onCursor(x.invert(at.x))));
  const column = pointed && pointed.x >= 0 && pointed.x <= inner.width ? columnAt(frame, pointed.x) : undefined;
  const at = column === undefined ? undefined : { ...pointed!, column, sample: columns[column]! };
  const told = at && tip(at);
  const cursorX = cursorS === undefined ? -1 : x(cursorS);
  return (
    <>
      <Plate width={width} height={height} margin={margin} className={className} {...handlers}>
        {children}
        <TimeCursor x={cursorX} width={inner.width} height={inner.height} />
        {words}
        {told && (mark ? mark(at) : <path d={`M${at.column},0V${inner.height}`} className={styles.pointed} />)}
        {cursorX >= 0 && cursorX <= inner.width && atCursor?.(cursorX)}
      </Plate>
      {told && (
        <PointerTip
          x={margin.left + at.x}
          y={margin.top + (told.y ?? inner.height / 2)}
          width={width}
          height={height}
          title={told.title ?? printDayClock(timeline, x.invert(at.x))}
        >
          {told.lines.map((line, index) => (
            <span key={index}>{line}</span>
          ))}
        </PointerTip>
      )}
    </>
  );
}
