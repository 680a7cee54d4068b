import { fireEvent, render, screen } from '@testing-library/react';
import type { ReactNode } from 'react';
import { DeskContext } from '@/app/stage/desk-context';
import { createDeskStore } from '@/app/stage/desk-store';

type Opened = Parameters<typeof createDeskStore>[0];

/** A part of the desk, drawn on a script. */
export function onDesk(
  part: ReactNode,
  script: string,
  pictures: Opened['pictures'] = [],
  covered: Opened['covered'] = [],
) {
  const store = createDeskStore({ script, pictures, covered });
  return { store, ...render(<DeskContext value={store}>{part}</DeskContext>) };
}

/** The light DOM opens no <details> by a click, so the browser's own event is sent. */
export function openDisclosure(summary: string | RegExp) {
  const details = screen.getByText(summary).closest('details')!;
  details.open = true;
  fireEvent(details, new Event('toggle'));
}
