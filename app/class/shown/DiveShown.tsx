'use client';

import type { PictureId } from '../../pictures/picture-ids';
import { useDesk } from '../../stage/desk-context';
import { cursorSample } from '../../stage/desk-store';
import { pictures } from '../../stage/figures/all';
import { DepthLinePicture } from './DepthLinePicture';
import { lineUntil } from './line-until';
import styles from './shown.module.css';

/**
 * The pictures of the dive; while a reading is covered, its depth up to the moment and no more, or the pictures would tell
 * what the covers hide.
 */
export function DiveShown({ pictures: shown }: { pictures: readonly PictureId[] }) {
  const scene = useDesk((state) => state.scene);
  const sample = useDesk(cursorSample);
  const isSecret = useDesk((state) => state.covered.some((id) => id !== 'depth' && id !== 'time'));
  if (isSecret) {
    const line = lineUntil(scene, scene.timeline.timeS[sample]!);
    return (
      <div>
        <p className={styles.why}>Some readings are covered, so the pictures wait: this is the dive up to now.</p>
        {line && <DepthLinePicture {...line} />}
      </div>
    );
  }
  return (
    <div className={styles.wall}>
      {shown.map((id) => {
        const { Figure } = pictures[id];
        return (
          <div key={id}>
            <Figure />
          </div>
        );
      })}
    </div>
  );
}
