'use client';

import { ChasePicture, runnersAt } from './ChasePicture';
import { PictureFrame } from './PictureFrame';
import { usePicture } from './use-picture';
import styles from './pictures.module.css';

export function ChaseFigure() {
  const { ref, ...picture } = usePicture((width) => (width < 500 ? 290 : 340));
  const { scene, sample } = picture;
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
        <ChasePicture {...picture} />
      </div>
    </PictureFrame>
  );
}
