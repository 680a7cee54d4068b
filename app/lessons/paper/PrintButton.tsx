'use client';

import { Button } from '../../parts/Button';

/** Prints the page as it is. */
export function PrintButton() {
  return (
    <Button icon="print" onClick={() => window.print()}>
      Print
    </Button>
  );
}
