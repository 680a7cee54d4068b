import { screen, waitFor } from '@testing-library/react';
import { expect } from 'vitest';
import { PictureChooser } from '@/app/desk/PictureChooser';
import type { PictureId } from '@/app/pictures/picture-ids';
import { pictures } from '@/app/stage/figures/all';
import { setCursor } from '../set-cursor';
import { onDesk } from '../on-desk';

/** At 30 m from 1:00 to 26:00 on air, limits 85/85, in water of 0.1 bar to the metre. */
export const SCRIPT = `water: reference
gradient factors: 85/85
gas: air

descend to 30 m at 30 m/min
stay 25 min
ascend to 6 m at 9 m/min
stay 20 min
ascend to surface at 9 m/min
`;

export async function openWall(shown: readonly PictureId[], script = SCRIPT) {
  const { store } = onDesk(
    <>
      <PictureChooser />
      {shown.map((id) => {
        const { Figure } = pictures[id];
        return <Figure key={id} />;
      })}
    </>,
    script,
    shown,
  );
  await waitFor(() => expect(screen.queryAllByRole('figure')).toHaveLength(shown.length));
  return store;
}

export const goTo = (store: Awaited<ReturnType<typeof openWall>>, timeS: number) => setCursor(store, timeS);
