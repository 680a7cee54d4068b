import { useLayoutEffect, type RefObject } from 'react';

/** Says on the page where a working stands beside the sheet: under the line at its top, above the hand on time. */
export function useWorkingPlace(sheet: RefObject<HTMLElement | null>): void {
  useLayoutEffect(() => {
    const { style } = document.documentElement;
    const measure = () => {
      const room = sheet.current?.querySelector('[data-place="figures"]')?.getBoundingClientRect();
      const time = sheet.current?.querySelector('[data-part="time"]')?.getBoundingClientRect();
      if (room) style.setProperty('--working-top', `${Math.round(room.top)}px`);
      if (time) style.setProperty('--working-bottom', `${Math.round(window.innerHeight - time.top)}px`);
    };
    measure();
    const observer = typeof ResizeObserver === 'undefined' ? undefined : new ResizeObserver(measure);
    for (const part of sheet.current?.children ?? []) observer?.observe(part);
    return () => {
      observer?.disconnect();
      style.removeProperty('--working-top');
      style.removeProperty('--working-bottom');
    };
  });
}
