import { render, screen } from '@testing-library/react';
import userEvent from '@testing-library/user-event';
import { describe, expect, it } from 'vitest';
import { LessonPlayer } from '@/app/lessons/player/LessonPlayer';
import { EVERY_WAY, prepared } from './lesson-parts';

describe('a question about what is taught or known of people', () => {
  it('does not say that the model says what no figure of it decides', async () => {
    window.location.hash = '#by-choice';
    const known = EVERY_WAY.replace(/holds: ceilingM at leaving > 0/, 'right: true').replace(
      /holds: ceilingM.*== 0, /,
      '',
    );
    render(<LessonPlayer lesson={prepared(known)} />);
    await userEvent.click(await screen.findByRole('radio', { name: 'A stop is needed.' }));
    await userEvent.click(screen.getByRole('radio', { name: 'A guess' }));
    await userEvent.click(screen.getByRole('button', { name: 'Show the answer' }));
    expect(screen.getByText('That is right.', { exact: false })).toHaveFocus();
    expect(screen.queryByText(/the model says/i)).toBeNull();
  });
});
