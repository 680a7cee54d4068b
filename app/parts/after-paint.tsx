import { useDeferredValue, type ComponentType } from 'react';

/**
 * A part that takes long to draw, drawn once the page has shown the rest of an answer: until then `Meanwhile` stands in
 * its place. A press is then answered in the next frame, however much there is to say.
 */
export function afterPaint<Props extends object>(
  Part: ComponentType<Props>,
  Meanwhile: ComponentType,
): ComponentType<Props> {
  return function AfterPaint(props: Props) {
    const due = useDeferredValue(true, false);
    return due ? <Part {...props} /> : <Meanwhile />;
  };
}

/**
 * Does something once the page has painted what stands now, soon where nobody sees it. What is asked for first is done
 * first.
 */
export function oncePainted(task: () => void): void {
  if (document.hidden) setTimeout(task);
  else requestAnimationFrame(() => setTimeout(task));
}
