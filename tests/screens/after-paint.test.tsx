import { act, render, screen } from '@testing-library/react';
import { createRoot } from 'react-dom/client';
import { flushSync } from 'react-dom';
import { describe, expect, it } from 'vitest';
import { afterPaint } from '@/app/parts/after-paint';

function Long({ words }: { words: string }) {
  return <p>{words}</p>;
}
const Soon = afterPaint(Long, () => <p role="status">Coming</p>);

describe('a part drawn after the first paint', () => {
  it('leaves its place to what stands for it in the first frame', async () => {
    const place = document.createElement('div');
    const root = createRoot(place);
    await act(() => {
      flushSync(() => root.render(<Soon words="all of it" />));
      expect(place.textContent).toBe('Coming');
    });
    expect(place.textContent).toBe('all of it');
    root.unmount();
  });

  it('is then drawn as any other, with what it is given', () => {
    const { rerender } = render(<Soon words="first" />);
    expect(screen.getByText('first')).toBeInTheDocument();
    rerender(<Soon words="second" />);
    expect(screen.getByText('second')).toBeInTheDocument();
  });
});
