// @vitest-environment happy-dom
import { describe, expect, it } from 'vitest';
import { readDivePage, writeDivePage } from '@/lib/files/links/dive-page';
import { decodeState, encodeState } from '@/lib/files/links/share-link';

const EMPTY = `<html lang="en-GB" data-theme="light"><head><title>A dive</title></head><body>
<pre data-place="script"></pre><script type="text/plain" id="halftime-dive"></script></body></html>`;

const HOSTILE =
  '# </pre></title></script><script>window.ran = true</script><img src=x onerror="window.ran = true"> $& $1\n';
const script = `${HOSTILE}descend to 30 m at 18 m/min\nstay 20 min\nascend to surface at 9 m/min\n`;
const title = HOSTILE.slice(2).trim();
const encoded = encodeState({ script, title });
const fragment = encoded.ok ? encoded.fragment : '';
const page = writeDivePage(EMPTY, { title, fragment, script, units: 'imperial', theme: '"><script>' });

describe('a dive as a page of its own', () => {
  it('gives back exactly the dive that was put into it', () => {
    expect(readDivePage(page)).toBe(fragment);
    expect(decodeState(readDivePage(page)!)).toMatchObject({ ok: true, state: { script, title } });
  });

  it('holds titles, remarks and scripts as text alone, whatever is written in them', () => {
    const made = new DOMParser().parseFromString(page, 'text/html');
    expect(made.querySelectorAll('script')).toHaveLength(1);
    expect(made.querySelectorAll('img')).toHaveLength(0);
    expect(made.querySelector('pre')!.textContent).toBe(script);
    expect(made.title).toBe(`${title} · Halftime`);
    expect(made.documentElement.dataset['theme']).toBe('"><script>');
    expect(made.documentElement.dataset['units']).toBe('imperial');
  });

  it('is not seen in another file, nor in a page that no dive was put into', () => {
    for (const other of ['', 'time,depth\n0,0\n', '<html><script>1</script></html>', EMPTY])
      expect(readDivePage(other)).toBeUndefined();
  });

  it('is not written into a page that has no place for it', () => {
    expect(() => writeDivePage('<html></html>', { title, fragment, script, units: 'metric', theme: 'light' })).toThrow(
      'no place',
    );
  });
});
