'use client';

import { usePreferences } from '../parts/preferences';
import { ChasePicture, runnersAt } from './chase-picture';
import { cursorSample } from './desk-store';
import { useDesk } from './desk-context';
import { PictureFrame } from './Picture';
import { useWidth } from './use-width';
import styles from './desk.module.css';

export function ChaseFigure() {
  const scene = useDesk((state) => state.scene);
  const sample = useDesk(cursorSample);
  const cursorS = useDesk((state) => state.cursorS);
  const onCursor = useDesk((state) => state.setCursor);
  const units = usePreferences((state) => state.units);
  const { ref, width } = useWidth<HTMLDivElement>(640);
  const over = runnersAt(scene, sample).filter((runner) => runner.tensionBar > runner.limitAtSurfaceBar).length;

  return (
    <PictureFrame
      title="The chase"
      sentence={
        'Sixteen compartments chase the gas breathed, the fast ones on the left. ' +
        (over === 0 ? 'None is past its limit at the surface.' : `${over} past the limit at the surface, drawn as a lozenge.`)
      }
      columns={[
        { heading: 'Compartment', cell: (runner) => runner.number },
        { heading: 'Half-time, min', numeric: true, cell: (runner) => runner.halfTimeMin },
        { heading: 'Tension, bar', numeric: true, cell: (runner) => runner.tensionBar.toFixed(3) },
        { heading: 'Limit now, bar', numeric: true, cell: (runner) => runner.limitNowBar.toFixed(3) },
        { heading: 'Limit at the surface, bar', numeric: true, cell: (runner) => runner.limitAtSurfaceBar.toFixed(3) },
      ]}
      rows={() => runnersAt(scene, sample)}
    >
      <div ref={ref} className={styles.canvas}>
        <ChasePicture
          scene={scene}
          sample={sample}
          cursorS={cursorS}
          width={width}
          height={width < 500 ? 300 : 380}
          units={units}
          onCursor={onCursor}
        />
      </div>
    </PictureFrame>
  );
}
