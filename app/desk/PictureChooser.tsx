'use client';

import { useState } from 'react';
import { Button } from '../parts/Button';
import { Disclosure } from '../parts/Disclosure';
import { useDesk } from '../stage/desk-context';
import { PICTURE_IDS, type PictureId } from '../pictures/picture-ids';
import { pictures } from '../stage/figures/all';
import styles from './picture-chooser.module.css';

/** Which pictures are on the desk, and in what order. Each change is one step to undo. */
export function PictureChooser() {
  const shown = useDesk((state) => state.pictures);
  const change = useDesk((state) => state.change);
  const [said, say] = useState('');
  const hidden = PICTURE_IDS.filter((id) => !shown.includes(id));

  const show = (id: PictureId, on: boolean) => {
    const next = on ? [...shown, id] : shown.filter((other) => other !== id);
    change({ pictures: next });
    say(`${pictures[id].title} is ${on ? `shown, ${next.length} of ${next.length}` : 'hidden'}.`);
  };
  const move = (id: PictureId, by: -1 | 1) => {
    const from = shown.indexOf(id);
    const to = from + by;
    if (to < 0 || to >= shown.length) return;
    const next = shown.filter((other) => other !== id);
    next.splice(to, 0, id);
    change({ pictures: next });
    say(`${pictures[id].title} is now ${to + 1} of ${shown.length}.`);
  };

  return (
    <div className={`${styles.chooser} unprinted`}>
      <Disclosure summary="Choose pictures">
        <ul className={styles.list} aria-label="Pictures">
          {[...shown, ...hidden].map((id) => {
            const { title } = pictures[id];
            const place = shown.indexOf(id);
            return (
              <li key={id}>
                <label>
                  <input type="checkbox" checked={place >= 0} onChange={(event) => show(id, event.target.checked)} />
                  {title}
                </label>
                {place >= 0 && (
                  <span className={styles.moves}>
                    {/* Kept in reach at either end, so that the focus is not lost on the way there. */}
                    <Button
                      kind="quiet"
                      aria-label={`Move ${title} up`}
                      aria-disabled={place === 0}
                      onClick={() => move(id, -1)}
                    >
                      Up
                    </Button>
                    <Button
                      kind="quiet"
                      aria-label={`Move ${title} down`}
                      aria-disabled={place === shown.length - 1}
                      onClick={() => move(id, 1)}
                    >
                      Down
                    </Button>
                  </span>
                )}
              </li>
            );
          })}
        </ul>
      </Disclosure>
      {shown.length === 0 && <p>No picture is shown. Open “Choose pictures” and tick one, or undo.</p>}
      <p role="status" className="spoken">
        {said}
      </p>
    </div>
  );
}
