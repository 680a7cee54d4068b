'use client';

import { useEffect, useId, useLayoutEffect, useRef, useState, type ReactNode } from 'react';
import { Icon, type IconName } from './Icon';
import styles from './Menu.module.css';

interface MenuProps {
  /** What it holds. */
  label: string;
  icon: IconName;
  children: ReactNode;
}

/** How near the edges of the window it comes, px. */
const RIM_PX = 8;

/** A button that opens a small panel of tools over the page, until Escape or a press elsewhere puts it away. */
export function Menu({ label, icon, children }: MenuProps) {
  const id = useId();
  const [open, setOpen] = useState(false);
  const button = useRef<HTMLButtonElement>(null);
  const panel = useRef<HTMLDivElement>(null);

  // Over everything, wherever the button stands: what holds the button may cut off what reaches out of it.
  useLayoutEffect(() => {
    const [element, opener] = [panel.current, button.current];
    if (!open || !element || !opener) return undefined;
    element.showPopover?.();
    const place = () => {
      const from = opener.getBoundingClientRect();
      const { offsetWidth: width, offsetHeight: height } = element;
      const below = from.bottom + RIM_PX / 2;
      const fits = below + height + RIM_PX <= window.innerHeight;
      const above = from.top - height - RIM_PX / 2;
      element.style.insetInlineStart = `${Math.max(RIM_PX, Math.min(from.right - width, window.innerWidth - width - RIM_PX))}px`;
      element.style.insetBlockStart = `${Math.max(RIM_PX, fits ? below : above >= RIM_PX ? above : window.innerHeight - height - RIM_PX)}px`;
    };
    place();
    const observer = typeof ResizeObserver === 'undefined' ? undefined : new ResizeObserver(place);
    observer?.observe(element);
    window.addEventListener('resize', place);
    return () => {
      observer?.disconnect();
      window.removeEventListener('resize', place);
    };
  }, [open]);

  useEffect(() => {
    if (!open) return undefined;
    const away = ({ target }: PointerEvent) => {
      if (target instanceof Node && !panel.current?.contains(target) && !button.current?.contains(target))
        setOpen(false);
    };
    window.addEventListener('pointerdown', away);
    return () => window.removeEventListener('pointerdown', away);
  }, [open]);

  return (
    <div
      className={styles.menu}
      onKeyDown={(event) => {
        if (event.key !== 'Escape' || !open || event.defaultPrevented) return;
        event.preventDefault();
        event.stopPropagation();
        setOpen(false);
        button.current?.focus();
      }}
    >
      <button
        ref={button}
        type="button"
        className={styles.button}
        aria-label={label}
        title={label}
        aria-expanded={open}
        aria-controls={open ? id : undefined}
        onClick={() => setOpen(!open)}
      >
        <Icon name={icon} />
      </button>
      {open && (
        <div
          ref={panel}
          id={id}
          popover="manual"
          role="group"
          aria-label={label}
          className={styles.panel}
          onClick={({ target }) => {
            // What it was opened for is done; a box to tick may be followed by another.
            if (target instanceof Element && target.closest('[data-done]')) setOpen(false);
          }}
        >
          {children}
        </div>
      )}
    </div>
  );
}
