import { act, render, screen, waitFor } from '@testing-library/react';
import userEvent from '@testing-library/user-event';
import { describe, expect, it } from 'vitest';
import { fetchedLater, UnfetchedInPicture } from '@/app/parts/fetched-later';
import { useStatus } from '@/app/parts/status';

describe('a part that is fetched later', () => {
  it('says so where it can’t be had, and comes when it is tried again', async () => {
    let online = false;
    const Part = fetchedLater<{ name: string }>(async () => {
      if (!online) throw new TypeError('Failed to fetch');
      return function Called({ name }) {
        return <p>The part called {name}</p>;
      };
    }, 'On its way');
    render(<Part name="reef" />);
    expect(await screen.findByRole('alert')).toHaveTextContent('Nothing on the page is lost.');
    await userEvent.click(screen.getByRole('button', { name: 'Try again' }));
    expect(await screen.findByRole('alert')).toBeInTheDocument();
    online = true;
    await userEvent.click(screen.getByRole('button', { name: 'Try again' }));
    expect(await screen.findByText('The part called reef')).toBeInTheDocument();
    expect(screen.queryByRole('alert')).not.toBeInTheDocument();
  });

  it('in a picture is told of by the page, and comes with any other that is tried again', async () => {
    let online = false;
    const missing = (words: string) => async () => {
      if (!online) throw new TypeError('Failed to fetch');
      return function Words() {
        return <text>{words}</text>;
      };
    };
    const Marks = fetchedLater(missing('The marks'), null, UnfetchedInPicture);
    const Handles = fetchedLater(missing('The handles'), null, UnfetchedInPicture);
    render(
      <svg>
        <Marks />
        <Handles />
      </svg>,
    );
    await waitFor(() =>
      expect(useStatus.getState().message).toMatchObject({
        text: expect.stringContaining('could not be fetched'),
        action: { label: 'Try again' },
      }),
    );
    online = true;
    act(() => useStatus.getState().message!.action!.run());
    expect(await screen.findByText('The marks')).toBeInTheDocument();
    expect(await screen.findByText('The handles')).toBeInTheDocument();
  });
});
