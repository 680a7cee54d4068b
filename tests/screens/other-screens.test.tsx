import { render, screen } from '@testing-library/react';
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
