import { act, screen, waitFor } from '@testing-library/react';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { ScriptPanel } from '@/app/desk/ScriptPanel';
import { usePreferences } from '@/app/parts/preferences';
import { PICTURE_IDS } from '@/app/pictures/picture-ids';
import { pictures } from '@/app/stage/figures/all';
import { ReadingsPanel } from '@/app/stage/ReadingsPanel';
import { scenarios } from '@/content/scenarios/scenarios';
import { metricLeft } from './metric-left';
import { setCursor } from './set-cursor';
import { onDesk } from './on-desk';

beforeEach(() => act(() => usePreferences.setState({ units: 'imperial' })));
afterEach(() => act(() => usePreferences.setState({ units: 'metric' })));

describe('with feet chosen, no metric figure is left over', () => {
  it.each(PICTURE_IDS)('in the picture %s', async (id) => {
    const { Figure } = pictures[id];
    const { store } = onDesk(<Figure />, scenarios[4]!.inFeet.script, [id]);
    await waitFor(() => expect(screen.queryAllByRole('figure').length).toBeGreaterThan(0));
    for (const timeS of [0, 1200, store.getState().scene.timeline.timeS.at(-1)!]) {
      await setCursor(store, timeS);
      for (const disclosure of document.querySelectorAll('details')) act(() => disclosure.setAttribute('open', ''));
      await waitFor(() => expect(metricLeft()).toEqual([]));
    }
  });

  it.each(scenarios.map(({ id, inFeet }) => [id, inFeet.script]))('beside the ready dive %s', async (_, script) => {
    const { store } = onDesk(
      <>
        <ScriptPanel />
        <ReadingsPanel />
      </>,
      script,
    );
    await setCursor(store, 1200);
    expect(metricLeft()).toEqual([]);
  });
});
