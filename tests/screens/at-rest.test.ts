import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { atRest } from '@/app/offline/at-rest';

const loading = (state: DocumentReadyState) => vi.spyOn(document, 'readyState', 'get').mockReturnValue(state);

beforeEach(() => void vi.useFakeTimers());
afterEach(() => {
  vi.useRealTimers();
  vi.restoreAllMocks();
});

describe('a page at rest', () => {
  it('is one on which nobody has done anything for two seconds', () => {
    loading('complete');
    const then = vi.fn();
    atRest(then, new AbortController().signal);
    for (const doing of ['pointerdown', 'pointermove', 'keydown', 'wheel']) {
      vi.advanceTimersByTime(1900);
      window.dispatchEvent(new Event(doing));
    }
    vi.advanceTimersByTime(1900);
    expect(then).not.toHaveBeenCalled();
    vi.advanceTimersByTime(200);
    expect(then).toHaveBeenCalledOnce();
    window.dispatchEvent(new Event('keydown'));
    vi.advanceTimersByTime(5000);
    expect(then).toHaveBeenCalledOnce();
  });

  it('is none that still loads, whatever is done on it meanwhile', () => {
    const state = loading('interactive');
    const then = vi.fn();
    atRest(then, new AbortController().signal);
    window.dispatchEvent(new Event('keydown'));
    vi.advanceTimersByTime(5000);
    expect(then).not.toHaveBeenCalled();
    state.mockReturnValue('complete');
    window.dispatchEvent(new Event('load'));
    vi.advanceTimersByTime(2100);
    expect(then).toHaveBeenCalledOnce();
  });

  it('is no longer waited for once the page gives up', () => {
    loading('complete');
    const [then, page] = [vi.fn(), new AbortController()];
    atRest(then, page.signal);
    page.abort();
    window.dispatchEvent(new Event('keydown'));
    vi.advanceTimersByTime(5000);
    expect(then).not.toHaveBeenCalled();
  });
});
