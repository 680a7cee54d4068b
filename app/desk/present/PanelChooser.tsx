'use client';

import { useEffect, useId, useRef, useState } from 'react';
import { Button } from '../../parts/Button';
import { useDesk } from '../../stage/desk-context';
import { PANEL_IDS, type PanelId } from '../../stage/panel-ids';
import { panelTitle } from './panels';
import { usePresented } from './use-presented';
import styles from './present.module.css';

/** What the class sees: ticked here, kept with the dive. */
export function PanelChooser() {
  const id = useId();
  const shown = usePresented();
  const change = useDesk((state) => state.change);
  const [open, setOpen] = useState(false);
  const box = useRef<HTMLDivElement>(null);
  const button = useRef<HTMLSpanElement>(null);

  useEffect(() => {
    if (!open) return undefined;
    box.current?.querySelector('input')?.focus();
    const away = (event: PointerEvent) => {
      if (
        !(event.target instanceof Node) ||
        box.current?.contains(event.target) ||
        button.current?.contains(event.target)
      )
        return;
      setOpen(false);
    };
    window.addEventListener('pointerdown', away);
    return () => window.removeEventListener('pointerdown', away);
  }, [open]);

  const tick = (panel: PanelId, on: boolean) =>
    change({ presented: on ? [...shown, panel] : shown.filter((other) => other !== panel) });
  return (
    <div>
      <span ref={button}>
        <Button icon="table" aria-expanded={open} aria-controls={id} onClick={() => setOpen(!open)}>
          <span className={styles.word}>Panels</span>
        </Button>
      </span>
      {open && (
        <div
          ref={box}
          id={id}
          role="group"
          aria-label="What the class sees"
          className={styles.panelList}
          onKeyDown={(event) => {
            if (event.key !== 'Escape') return;
            event.preventDefault();
            setOpen(false);
            button.current?.querySelector('button')?.focus();
          }}
        >
          {PANEL_IDS.map((panel) => (
            <label key={panel}>
              <input
                type="checkbox"
                checked={shown.includes(panel)}
                onChange={(event) => tick(panel, event.target.checked)}
              />
              {panelTitle(panel)}
            </label>
          ))}
        </div>
      )}
    </div>
  );
}
