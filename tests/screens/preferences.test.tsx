import { act, render, screen } from '@testing-library/react';
import userEvent from '@testing-library/user-event';
import { beforeEach, describe, expect, it, vi } from 'vitest';
import { PreferenceSwitches } from '@/app/parts/PreferenceSwitches';
import { usePreferences } from '@/app/parts/preferences';
import { preferencesKey, themeScript } from '@/app/parts/theme';

const stored = () => JSON.parse(localStorage.getItem(preferencesKey) ?? 'null') as { state: unknown } | null;

async function openAgainWith(record: string) {
  localStorage.setItem(preferencesKey, record);
  await usePreferences.persist.rehydrate();
}

beforeEach(() => {
  usePreferences.setState(usePreferences.getInitialState(), true);
  localStorage.clear();
  document.documentElement.dataset['theme'] = 'light';
});

describe('preferences', () => {
  it('start metric and light', () => {
    render(<PreferenceSwitches />);
    expect(screen.getByRole('radio', { name: 'Metric' })).toBeChecked();
    expect(screen.getByRole('radio', { name: 'Light' })).toBeChecked();
  });

  it('are remembered once changed, and the theme takes hold at once', async () => {
    render(<PreferenceSwitches />);
    await userEvent.click(screen.getByRole('radio', { name: 'Imperial' }));
    await userEvent.click(screen.getByRole('radio', { name: 'Dark' }));
    expect(document.documentElement).toHaveAttribute('data-theme', 'dark');
    expect(stored()?.state).toEqual({
      units: 'imperial',
      theme: 'dark',
      tour: 'offered',
      holds: { desk: false, class: true },
    });
  });

  it('come back when the page is opened again', async () => {
    await openAgainWith(JSON.stringify({ state: { units: 'imperial', theme: 'system' }, version: 1 }));
    expect(usePreferences.getState()).toMatchObject({ units: 'imperial', theme: 'system' });
  });

  it('follow another window, and write nothing over what was chosen there', async () => {
    render(<PreferenceSwitches />);
    localStorage.setItem(
      preferencesKey,
      JSON.stringify({ state: { units: 'metric', theme: 'dark', tour: 'settled' }, version: 1 }),
    );
    act(() => void window.dispatchEvent(new StorageEvent('storage', { key: preferencesKey })));
    expect(await screen.findByRole('radio', { name: 'Dark', checked: true })).toBeInTheDocument();
    await vi.waitFor(() => expect(document.documentElement).toHaveAttribute('data-theme', 'dark'), { timeout: 20_000 });
    await userEvent.click(screen.getByRole('radio', { name: 'Imperial' }));
    expect(stored()?.state).toMatchObject({ units: 'imperial', theme: 'dark', tour: 'settled' });
  });

  it.each([
    ['not JSON at all', '{"state":', { units: 'metric', theme: 'light' }],
    ['of another shape', '[]', { units: 'metric', theme: 'light' }],
    [
      'with one field spoilt',
      JSON.stringify({ state: { units: 'furlongs', theme: 'dark' }, version: 1 }),
      { units: 'metric', theme: 'dark' },
    ],
    [
      'of a tour that was refused, and a unit system it does not know',
      JSON.stringify({ state: { tour: 'settled', units: 7 }, version: 1 }),
      { units: 'metric', tour: 'settled' },
    ],
    [
      'of a tour in a standing it does not know',
      JSON.stringify({ state: { tour: 'half-way' }, version: 1 }),
      { tour: 'offered' },
    ],
    [
      'of where playing holds, with a part spoilt',
      JSON.stringify({ state: { holds: { desk: true, class: 'perhaps' } }, version: 1 }),
      { holds: { desk: true, class: true } },
    ],
    [
      'from another version',
      JSON.stringify({ state: { units: 'imperial' }, version: 7 }),
      { units: 'imperial', theme: 'light' },
    ],
  ])('survive a record %s', async (_what, record, expected) => {
    await openAgainWith(record);
    expect(usePreferences.getState()).toMatchObject(expected);
  });

  it('still switch when storage is blocked', async () => {
    const blocked = vi.spyOn(window, 'localStorage', 'get').mockImplementation(() => {
      throw new DOMException('The operation is insecure.', 'SecurityError');
    });
    render(<PreferenceSwitches />);
    await userEvent.click(screen.getByRole('radio', { name: 'Imperial' }));
    expect(screen.getByRole('radio', { name: 'Imperial' })).toBeChecked();
    blocked.mockRestore();
    expect(stored()).toBeNull();
  });
});

describe('the script that runs before the first paint', () => {
  const runScript = () => new Function(themeScript)();

  it('puts on the remembered theme', () => {
    localStorage.setItem(preferencesKey, JSON.stringify({ state: { theme: 'dark' } }));
    runScript();
    expect(document.documentElement).toHaveAttribute('data-theme', 'dark');
  });

  it.each(['', '{', '{"state":{"theme":"neon"}}', 'null'])('leaves the default when the record is %j', (record) => {
    localStorage.setItem(preferencesKey, record);
    runScript();
    expect(document.documentElement).toHaveAttribute('data-theme', 'light');
  });
});
