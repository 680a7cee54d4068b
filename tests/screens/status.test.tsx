import { act, fireEvent, render, screen, within } from '@testing-library/react';
import userEvent from '@testing-library/user-event';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { Dialog } from '@/app/parts/Dialog';
import { StatusRegion } from '@/app/parts/StatusRegion';
import { useStatus } from '@/app/parts/status';

beforeEach(() => useStatus.getState().clear());
afterEach(() => vi.useRealTimers());

const say = (...message: Parameters<ReturnType<typeof useStatus.getState>['say']>) =>
  act(() => useStatus.getState().say(...message));

describe('the status region', () => {
  it('is there, empty, before anything is said, so that screen readers are listening', () => {
    render(<StatusRegion />);
    expect(screen.getByRole('status')).toBeEmptyDOMElement();
  });

  it('says the newest message only', () => {
    render(<StatusRegion />);
    say('Copied the link.');
    say('Saved the picture.');
    expect(screen.getByRole('status')).toHaveTextContent('Saved the picture.');
    expect(screen.getByRole('status')).not.toHaveTextContent('Copied');
  });

  it('offers to undo, does it once and is done', async () => {
    const run = vi.fn();
    render(<StatusRegion />);
    say('Removed the second dive.', { label: 'Undo', run });
    await userEvent.click(screen.getByRole('button', { name: 'Undo' }));
    expect(run).toHaveBeenCalledTimes(1);
    expect(screen.getByRole('status')).toBeEmptyDOMElement();
  });

  it('can be put away by hand', async () => {
    render(<StatusRegion />);
    say('Copied the link.');
    await userEvent.click(screen.getByRole('button', { name: 'Put this message away' }));
    expect(screen.getByRole('status')).toBeEmptyDOMElement();
  });

  it('stays while there is something to do about it, until something else is done', async () => {
    vi.useFakeTimers();
    render(
      <>
        <button>Elsewhere</button>
        <StatusRegion />
      </>,
    );
    say('Removed the second dive.', { label: 'Undo', run: () => undefined });
    act(() => void vi.advanceTimersByTime(60_000));
    expect(screen.getByRole('button', { name: 'Undo' })).toBeInTheDocument();
    fireEvent.keyDown(document.body, { key: 'Tab' });
    fireEvent.keyDown(screen.getByRole('button', { name: 'Undo' }), { key: 'ArrowDown' });
    fireEvent.pointerDown(screen.getByRole('button', { name: 'Undo' }));
    expect(screen.getByRole('button', { name: 'Undo' })).toBeInTheDocument();
    fireEvent.pointerDown(screen.getByRole('button', { name: 'Elsewhere' }));
    expect(screen.getByRole('status')).toBeEmptyDOMElement();
    vi.useRealTimers();
  });

  it('is in the dialog that holds the page, where it is seen and heard, and on the page again after it', () => {
    const withDialog = (open: boolean) => (
      <>
        <main>
          <StatusRegion />
        </main>
        <Dialog open={open} onClose={() => undefined} title="Pass on">
          <p>A link</p>
        </Dialog>
      </>
    );
    const { rerender } = render(withDialog(true));
    const inside = within(screen.getByRole('dialog')).getByRole('status');
    expect(inside).toBeEmptyDOMElement();
    say('Copied the link.');
    expect(inside).toHaveTextContent('Copied the link.');
    expect(screen.getAllByText('Copied the link.')).toHaveLength(1);
    rerender(withDialog(false));
    say('Saved the picture.');
    expect(within(screen.getByRole('main')).getByRole('status')).toHaveTextContent('Saved the picture.');
  });

  it('goes by itself after a while', () => {
    vi.useFakeTimers();
    render(<StatusRegion />);
    say('Copied the link.');
    act(() => void vi.advanceTimersByTime(20_000));
    expect(screen.getByRole('status')).toBeEmptyDOMElement();
  });
});
