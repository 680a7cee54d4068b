import { render, screen } from '@testing-library/react';
import userEvent from '@testing-library/user-event';
import { describe, expect, it } from 'vitest';
import { fetchedLater } from '@/app/parts/fetched-later';

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

  it('comes with any other that is tried again', async () => {
    let online = false;
    const missing = (words: string) => async () => {
      if (!online) throw new TypeError('Failed to fetch');
      return function Words() {
        return <p>{words}</p>;
      };
    };
    const Marks = fetchedLater(missing('The marks'));
    const Handles = fetchedLater(missing('The handles'));
    render(
      <>
        <Marks />
        <Handles />
      </>,
    );
    expect(await screen.findAllByRole('alert')).toHaveLength(2);
    online = true;
    await userEvent.click(screen.getAllByRole('button', { name: 'Try again' })[0]!);
    expect(await screen.findByText('The marks')).toBeInTheDocument();
    expect(await screen.findByText('The handles')).toBeInTheDocument();
  });
});
