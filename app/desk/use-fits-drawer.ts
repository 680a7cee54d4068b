import { useLayoutEffect, useState, type RefObject } from 'react';

/** From this width on there is room for the script beside the pictures; the style sheet says the same. */
const FROM_REM = 84;

/** Whether a sheet has room for its drawer without being asked. */
export function useFitsDrawer(sheet: RefObject<HTMLElement | null>): boolean {
  const [fits, setFits] = useState(true);
  useLayoutEffect(() => {
    const element = sheet.current;
    if (!element || typeof ResizeObserver === 'undefined') return undefined;
    const observer = new ResizeObserver(([entry]) => {
      const rem = parseFloat(getComputedStyle(document.documentElement).fontSize);
      setFits(entry!.contentRect.width >= FROM_REM * rem);
    });
    observer.observe(element);
    return () => observer.disconnect();
  }, [sheet]);
  return fits;
}
