import { render, screen } from '@testing-library/react';
import userEvent from '@testing-library/user-event';
import { afterEach, describe, expect, it, vi } from 'vitest';
import { OnOtherScreens } from '@/app/front/OnOtherScreens';

const answering = (body: unknown, type = 'application/json') =>
  vi.stubGlobal('fetch', () =>
    Promise.resolve(new Response(JSON.stringify(body), { headers: { 'content-type': type } })),
  );
const secure = (is: boolean) => vi.stubGlobal('isSecureContext', is);

afterEach(() => vi.unstubAllGlobals());

describe('the front page, of other screens', () => {
  it('gives the addresses of a server that is open to the network, and the first as a code', async () => {
    secure(true);
    answering({ inNetwork: ['http://192.168.1.5:3000', 'http://10.0.0.2:3000'] });
    render(<OnOtherScreens />);
    expect(await screen.findByRole('link', { name: 'http://192.168.1.5:3000' })).toHaveAttribute(
      'href',
      'http://192.168.1.5:3000',
    );
    expect(screen.getAllByRole('link')).toHaveLength(2);
    expect(screen.getByRole('img', { name: 'QR code of the link' })).toBeInTheDocument();
  });

  it('says how to open one that is open to this machine alone', async () => {
    secure(true);
    answering({ inNetwork: [] });
    render(<OnOtherScreens />);
    expect(await screen.findByText('npm start -- --class')).toBeInTheDocument();
  });

  it('opens a server on its own machine to the network by a press, and closes it', async () => {
    secure(true);
    const asked: unknown[] = [];
    let inNetwork: string[] = [];
    vi.stubGlobal('fetch', (_: string, { method, body }: RequestInit) => {
      if (method === 'POST') {
        asked.push(JSON.parse(body as string));
        inNetwork = inNetwork.length > 0 ? [] : ['http://192.168.1.5:3000'];
      }
      return Promise.resolve(
        new Response(JSON.stringify({ inNetwork, maySwitch: true }), {
          headers: { 'content-type': 'application/json' },
        }),
      );
    });
    render(<OnOtherScreens />);
    await userEvent.click(await screen.findByRole('button', { name: 'Open it to this network' }));
    expect(await screen.findByRole('link', { name: 'http://192.168.1.5:3000' })).toBeInTheDocument();
    await userEvent.click(screen.getByRole('button', { name: 'Close it to the network' }));
    expect(await screen.findByRole('button', { name: 'Open it to this network' })).toBeInTheDocument();
    expect(asked).toEqual([{ open: true }, { open: false }]);
  });

  it('says so where there is no network to open it to', async () => {
    secure(true);
    answering({ inNetwork: [], maySwitch: true });
    render(<OnOtherScreens />);
    await userEvent.click(await screen.findByRole('button', { name: 'Open it to this network' }));
    expect(await screen.findByText(/is in no network by which others could reach it/)).toBeInTheDocument();
  });

  it('says over plain HTTP from another machine what can’t work', async () => {
    secure(false);
    answering({}, 'text/html');
    render(<OnOtherScreens />);
    expect(await screen.findByText(/can’t be kept here for use without a network/)).toBeInTheDocument();
  });

  it.each([[{ inNetwork: ['javascript:alert(1)'] }], [{ inNetwork: 'x' }], [[]]])(
    'takes no word from a server that tells %j',
    async (body) => {
      secure(true);
      answering(body);
      const { container } = render(<OnOtherScreens />);
      await new Promise((resolve) => setTimeout(resolve, 50));
      expect(container).toBeEmptyDOMElement();
    },
  );
});
