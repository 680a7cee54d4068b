import { render, screen } from '@testing-library/react';
import userEvent from '@testing-library/user-event';
import { describe, expect, it, vi } from 'vitest';
import ScreenError from '@/app/error';
import NotFound from '@/app/not-found';
import { builtTexts } from '@/app/parts/built-texts';

describe('a screen that failed', () => {
  it('says whose fault it is and what is kept, sends what failed to the console, and offers to try again or leave', async () => {
    const reset = vi.fn();
    const told = vi.spyOn(console, 'error').mockImplementation(() => undefined);
    render(<ScreenError error={new Error('the plate has no width')} reset={reset} />);
    expect(screen.getByRole('heading', { level: 1, name: 'This screen stopped working' })).toBeInTheDocument();
    expect(screen.getByText(/is still kept on this machine/)).toBeInTheDocument();
    expect(screen.queryByText(/plate/)).toBeNull();
    expect(told).toHaveBeenCalledWith(new Error('the plate has no width'));
    told.mockRestore();
    expect(screen.getByRole('link', { name: 'Go to the front door' })).toHaveAttribute('href', '/');
    await userEvent.click(screen.getByRole('button', { name: 'Try again' }));
    expect(reset).toHaveBeenCalledOnce();
  });
});

describe('an address that leads nowhere', () => {
  it('says that nothing is lost, and leads to the front door', () => {
    // It is drawn when the site is built.
    const html = builtTexts().get((NotFound().props as { name: string }).name)!;
    render(<div dangerouslySetInnerHTML={{ __html: html }} />);
    expect(screen.getByRole('heading', { level: 1, name: 'There is no page here' })).toBeInTheDocument();
    expect(screen.getByText(/Nothing is lost/)).toBeInTheDocument();
    expect(screen.getByRole('link', { name: 'Go to the front door' })).toHaveAttribute('href', '/');
  });
});
