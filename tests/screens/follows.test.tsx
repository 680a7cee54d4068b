import { act, render, screen } from '@testing-library/react';
import { beforeEach, describe, expect, it } from 'vitest';
import { TYPING } from '@/app/keep/history';
import { DeskContext, useDesk, useDeskOncePainted } from '@/app/stage/desk-context';
import { createDeskStore, type DeskStore } from '@/app/stage/desk-store';
import type { DeskState } from '@/app/stage/desk-state';
import { followed } from './set-cursor';

const SCRIPT = 'gas: air\ndescend to 20 m at 20 m/min\nstay 20 min\nascend to surface at 10 m/min\n';
const deeper = SCRIPT.replace('20 m at', '30 m at');

/** Where the cursor stands and how deep the dive goes. */
const told = (state: DeskState): string => `${state.cursorS} ${state.scene.timeline.legs[0]!.toM}`;

const UnderHand = () => <p aria-label="under the hand">{useDesk(told)}</p>;
const Pulled = () => <p aria-label="pulled">{useDeskOncePainted(told, true)}</p>;
const AllElse = () => <p aria-label="all else">{useDeskOncePainted(told)}</p>;

let store: DeskStore;
const say = () => ['under the hand', 'pulled', 'all else'].map((name) => screen.getByLabelText(name).textContent);

beforeEach(() => {
  store = createDeskStore({ script: SCRIPT, pictures: [], covered: [] });
  render(
    <DeskContext value={store}>
      <UnderHand />
      <Pulled />
      <AllElse />
    </DeskContext>,
  );
  expect(say()).toEqual(['0 20', '0 20', '0 20']);
});

describe('what follows the hand by a frame', () => {
  it('is all but the time controls, when they are pressed', async () => {
    act(() => store.getState().setCursor(30));
    expect(say()).toEqual(['30 20', '0 20', '0 20']);
    await followed();
    expect(say()).toEqual(['30 20', '30 20', '30 20']);
  });

  it('is all but the script, when it is typed in', async () => {
    act(() => store.getState().change({ script: deeper }, TYPING));
    expect(say()).toEqual(['0 30', '0 20', '0 20']);
    await followed();
    expect(say()).toEqual(['0 30', '0 30', '0 30']);
  });

  it('is all but the dive, when a point of it is pulled', async () => {
    act(() => store.getState().change({ script: deeper }, 'point 1'));
    expect(say()).toEqual(['0 30', '0 30', '0 20']);
    await followed();
    expect(say()).toEqual(['0 30', '0 30', '0 30']);
  });

  it('is nothing while the dive plays or is steered, and when a change is undone', async () => {
    act(() => store.getState().change({ script: deeper }));
    expect(say()).toEqual(['0 30', '0 30', '0 30']);
    act(() => store.getState().undo());
    expect(say()).toEqual(['0 20', '0 20', '0 20']);
    act(() => store.getState().play());
    act(() => store.getState().setCursor(1));
    expect(say()).toEqual(['1 20', '1 20', '1 20']);
    // A jump over half a minute is a press, also while it plays.
    act(() => store.getState().setCursor(31));
    expect(say()).toEqual(['31 20', '1 20', '1 20']);
    await followed();
    act(() => store.getState().startRun());
    expect(new Set(say()).size).toBe(1);
  });
});
