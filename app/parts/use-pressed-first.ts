import { useState } from 'react';
import { oncePainted } from './after-paint';

/**
 * For a press whose answer takes long to put in the place of what is there: the button is seen to be pressed (`aria-busy`),
 * then the answer comes. A second press in between is the first one once more, and asks for nothing.
 */
export function usePressedFirst(answer: () => void): { readonly 'aria-busy': boolean; readonly onClick: () => void } {
  const [pressed, setPressed] = useState(false);
  const onClick = () => {
    if (pressed) return;
    setPressed(true);
    oncePainted(() => {
      setPressed(false);
      answer();
    });
  };
  return { 'aria-busy': pressed, onClick };
}
