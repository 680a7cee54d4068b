import { act, cleanup, render, screen, within } from '@testing-library/react';
import userEvent from '@testing-library/user-event';
import { beforeAll, describe, expect, it, vi } from 'vitest';
import { DeskContext } from '@/app/stage/desk-context';
import { createDeskStore } from '@/app/stage/desk-store';
import { ScriptPanel } from '@/app/desk/ScriptPanel';
import { UndoButtons } from '@/app/desk/UndoButtons';
import { usePreferences } from '@/app/parts/preferences';
import { scriptReference } from '@/lib/dive/script-reference';

const SCRIPT = 'gas: air\ndescend to 20 m at 18 m/min\nascend to surface at 9 m/min\n';

function show(script = SCRIPT) {
  const store = createDeskStore({ script: SCRIPT, pictures: [], covered: [] });
  store.getState().change({ script });
  render(
    <DeskContext value={store}>
      <UndoButtons />
      <ScriptPanel />
    </DeskContext>,
  );
  return store;
}

// What helps to write a dive is fetched later; on a busy machine later than a test waits.
beforeAll(async () => {
  await import('@/app/desk/keep/keep-and-print');
  show();
  await screen.findByText('How to write a dive');
  cleanup();
});

describe('the script panel', () => {
  it('changes the dive as it is typed, and takes the typing back in one step', async () => {
    const store = show();
    const box = screen.getByRole('textbox', { name: 'Dive script' });
    await userEvent.type(box, '# twice');
    expect(store.getState().script).toBe(`${SCRIPT}# twice`);
    await userEvent.click(screen.getByRole('button', { name: 'Undo' }));
    expect(box).toHaveValue(SCRIPT);
  });

  it('follows a drag from its first movement, then ten times a second, and shows where it ended', () => {
    vi.useFakeTimers();
    try {
      const store = show();
      act(() => void vi.advanceTimersByTime(1000));
      const box = screen.getByRole('textbox', { name: 'Dive script' });
      const drag = (depth: string) =>
        act(() => store.getState().change({ script: SCRIPT.replace('20 m', depth) }, 'drag'));
      drag('21 m');
      expect(box).toHaveValue(SCRIPT.replace('20 m', '21 m'));
      drag('22 m');
      drag('23 m');
      expect(box).toHaveValue(SCRIPT.replace('20 m', '21 m'));
      act(() => void vi.advanceTimersByTime(100));
      expect(box).toHaveValue(SCRIPT.replace('20 m', '23 m'));
      drag('24 m');
      act(() => store.getState().settle());
      expect(box).toHaveValue(SCRIPT.replace('20 m', '24 m'));
      act(() => store.getState().undo());
      expect(box).toHaveValue(SCRIPT);
    } finally {
      vi.useRealTimers();
    }
  });

  it('shows the dive as it is to whoever begins to type right after a drag', async () => {
    const store = show();
    const box = screen.getByRole('textbox', { name: 'Dive script' });
    for (const depth of ['21 m', '22 m'])
      act(() => store.getState().change({ script: SCRIPT.replace('20 m', depth) }, 'drag'));
    await userEvent.type(box, '#');
    expect(store.getState().script).toBe(`${SCRIPT.replace('20 m', '22 m')}#`);
    expect(box).toHaveValue(store.getState().script);
  });

  it('names the line of a mistake and goes to the very words', async () => {
    show(SCRIPT.replace('20 m', '20 mm'));
    await userEvent.click(screen.getByRole('button', { name: 'Line 2.' }));
    const box = screen.getByRole<HTMLTextAreaElement>('textbox', { name: 'Dive script' });
    expect(box).toHaveFocus();
    expect(box.value.slice(box.selectionStart, box.selectionEnd)).toContain('mm');
  });

  it('makes the mend it offers when it is pressed, in one step to undo', async () => {
    const wrong = SCRIPT.replace('descend', 'descent').replace('ascend', 'ascent');
    const store = show(wrong);
    expect(screen.getByText(/Did you mean “descend”/)).toBeInTheDocument();
    await userEvent.click(screen.getByRole('button', { name: 'descend' }));
    await userEvent.click(screen.getByRole('button', { name: 'ascend' }));
    expect(store.getState().script).toBe(SCRIPT);
    expect(store.getState().errors).toEqual([]);
    act(() => store.getState().undo());
    expect(store.getState().script).toBe(SCRIPT.replace('ascend', 'ascent'));
  });

  it('offers ready dives, each with what it shows', async () => {
    const store = show();
    await userEvent.selectOptions(screen.getByLabelText('Ready dives'), 'too-fast');
    expect(store.getState().script).toContain('two ways up');
    expect(screen.getByText(/up at 9 m\/min it surfaces free of stops/)).toBeInTheDocument();
  });

  it('offers ready dives of their own to who thinks in feet, and writes a script in the units chosen', async () => {
    usePreferences.setState({ units: 'imperial' });
    try {
      const store = show();
      await userEvent.click(screen.getByRole('button', { name: 'Write it in feet' }));
      expect(store.getState().script).toBe(
        'gas: air\ndescend to 65.6 ft at 59 ft/min\nascend to surface at 29.5 ft/min\n',
      );
      expect(screen.queryByRole('button', { name: /Write it in/ })).toBeNull();
      act(() => store.getState().undo());
      expect(store.getState().script).toBe(SCRIPT);
      await userEvent.selectOptions(screen.getByLabelText('Ready dives'), 'too-fast');
      expect(store.getState().script).toContain('descend to 120 ft at 60 ft/min');
      expect(screen.getByText(/up at 30 ft\/min it surfaces free of stops/)).toBeInTheDocument();
    } finally {
      act(() => usePreferences.setState({ units: 'metric' }));
    }
  });

  it('tells everything a script can say, once asked', async () => {
    show();
    await userEvent.click(screen.getByText('How to write a dive'));
    const terms = await screen.findAllByRole('term');
    expect(terms.map((term) => term.textContent).sort()).toEqual(scriptReference.map(({ name }) => name).sort());
    expect(within(terms[0]!.parentElement!).getByRole('definition')).toBeInTheDocument();
  });
});
