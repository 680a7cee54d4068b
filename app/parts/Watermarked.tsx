import { useId, type ReactNode } from 'react';
import { cautions } from '@/content/cautions';
import styles from './Watermarked.module.css';

/** Something that may be printed or photographed apart from its page: the caution lies across all of it, under its pictures and its words. */
export function Watermarked({ children }: { children: ReactNode }) {
  const id = useId();
  return (
    <div className={styles.watermarked}>
      {children}
      {/* Text of a picture, because browsers leave out backgrounds when they print. */}
      <svg className={styles.watermark} aria-hidden="true" focusable="false" data-watermark="">
        <defs>
          <pattern id={id} width="330" height="92" patternUnits="userSpaceOnUse" patternTransform="rotate(-18)">
            <text x="6" y="30">
              {cautions.watermark}
            </text>
            <text x="-159" y="76">
              {cautions.watermark}
            </text>
            <text x="171" y="76">
              {cautions.watermark}
            </text>
          </pattern>
        </defs>
        <rect width="100%" height="100%" fill={`url(#${id})`} />
      </svg>
    </div>
  );
}
