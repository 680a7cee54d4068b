'use client';

import { useEffect, useRef, useState } from 'react';
import { usePreferences } from '../../parts/preferences';
import { useDeskStore } from '../desk-context';
import { announcing, type Listening } from './announcing';
import { ASK_KEY } from './ask-key';

/**
 * The one voice of a dive for whoever listens: what happens while a dive plays or is steered, where a jump has led,
 * what an edit has done, and, at one key, where the diver is. Clocks are silent.
 */
export function Announcer({ unread, led, titleOf }: Listening) {
  const store = useDeskStore();
  const [said, setSaid] = useState({ text: '', turn: 0 });
  const say = useRef((text: string) => text !== '' && setSaid(({ turn }) => ({ text, turn: turn + 1 })));
  useEffect(() => {
    const listening = { ...(unread && { unread }), ...(led && { led }), ...(titleOf && { titleOf }) };
    const { where, end } = announcing(store, () => usePreferences.getState().units, say.current, listening);
    const press = (event: KeyboardEvent) => {
      if (event.key !== ASK_KEY || event.ctrlKey || event.metaKey || event.altKey || event.shiftKey) return;
      event.preventDefault();
      where();
    };
    window.addEventListener('keydown', press);
    return () => {
      window.removeEventListener('keydown', press);
      end();
    };
  }, [store, unread, led, titleOf]);
  // The same words said again are new words to whoever listens.
  return (
    <div role="status" className="spoken" data-part="announced">
      {said.text && <span key={said.turn}>{said.text}</span>}
    </div>
  );
}
