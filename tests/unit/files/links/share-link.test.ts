import { Buffer } from 'node:buffer';
import { crc32 as nodeCrc32, deflateRawSync, inflateRawSync } from 'node:zlib';
import * as z from 'zod';
import { describe, expect, it } from 'vitest';
import { base64UrlOfBytes, bytesOfBase64Url } from '@/lib/files/links/base64url';
import { crc32 } from '@/lib/files/links/crc32';
import { decodeState, encodeState, LINK_LEAVES_OUT, type SharedState } from '@/lib/files/links/share-link';
import { seeded } from '@/lib/quantity/seeded';
import { SEED } from '@/tests/laws/law';

const state: SharedState = {
  script: 'water salt\ndescend to 30 m at 18 m/min\nstay 20 min\n',
  title: 'Wreck – day 2',
  view: { panels: ['chase'], cursorS: 600 },
};

function fragment(of: SharedState): string {
  const encoded = encodeState(of);
  if (!encoded.ok) throw new Error(encoded.what);
  return encoded.fragment;
}

/** A link made by hand, its checksum right, around any bytes. */
function forged(packed: Uint8Array): string {
  const bytes = Buffer.concat([Buffer.alloc(4), packed]);
  bytes.writeUInt32BE(nodeCrc32(packed));
  return `1.${bytes.toString('base64url')}`;
}

describe('the state in a link', () => {
  it('comes back exactly, with or without the #', () => {
    expect(decodeState(fragment(state))).toEqual({ ok: true, state: { ...state, view: undefined }, note: undefined });
    const schema = z.object({ panels: z.array(z.string()), cursorS: z.number() });
    expect(decodeState(`#${fragment(state)}`, schema)).toEqual({ ok: true, state, note: undefined });
  });

  it('is deflate (RFC 1951) in base64url (RFC 4648) with a CRC-32, as Node’s own tools read it', () => {
    const bytes = Buffer.from(fragment(state).slice(2), 'base64url');
    expect(bytes.readUInt32BE()).toBe(nodeCrc32(bytes.subarray(4)));
    expect(JSON.parse(inflateRawSync(bytes.subarray(4)).toString())).toEqual(state);
  });

  it('needs nothing of an address that would have to be escaped', () => {
    expect(fragment({ script: 'äöü 潜水 🤿\n'.repeat(50) })).toMatch(/^1\.[A-Za-z0-9_-]+$/);
  });

  it('comes back from scripts of every kind', () => {
    const random = seeded(SEED);
    for (let i = 0; i < 50; i += 1) {
      const script = Array.from({ length: Math.floor(random() * 400) }, () =>
        String.fromCharCode(32 + Math.floor(random() * 900)),
      ).join('');
      expect(decodeState(fragment({ script }))).toMatchObject({ ok: true, state: { script } });
    }
  });

  it('keeps the dive where what to show is not understood, and says so', () => {
    const decoded = decodeState(fragment(state), z.object({ other: z.string() }));
    expect(decoded).toMatchObject({ ok: true, state: { script: state.script, title: state.title } });
    expect(decoded.ok && decoded.note).toContain('The dive itself is whole.');
  });

  it('says what it leaves out', () => {
    expect(LINK_LEAVES_OUT).toContain('leaves out');
  });

  it('is refused where the dive is too long for a link', () => {
    const random = seeded(SEED);
    const script = Array.from({ length: 150_000 }, () => String.fromCharCode(33 + Math.floor(random() * 90))).join('');
    expect(encodeState({ script })).toEqual({
      ok: false,
      what: 'This dive is too long for a link.',
      mend: 'Export it as a file and send that instead.',
    });
  });
});

describe('a link that is not whole', () => {
  it('is refused for any one character changed, with words and without throwing', () => {
    const whole = fragment(state);
    for (let at = 2; at < whole.length; at += 1) {
      const changed = whole.slice(0, at) + (whole[at] === 'A' ? 'B' : 'A') + whole.slice(at + 1);
      const decoded = decodeState(changed);
      // The last character may hold bits that stand for nothing.
      if (decoded.ok) expect([at, decoded.state.script]).toEqual([whole.length - 1, state.script]);
      else expect(decoded.what.length * decoded.mend.length).toBeGreaterThan(0);
    }
  });

  it('is refused when cut off anywhere', () => {
    const whole = fragment(state);
    for (let at = 0; at < whole.length - 1; at += 1) expect(decodeState(whole.slice(0, at)).ok).toBe(false);
  });

  it.each([
    ['', 'The link carries no dive.'],
    ['#', 'The link carries no dive.'],
    ['hello', 'This is not a link to a dive.'],
    ['2.AAAAAAAA', 'The link is of version 2, and version 1 is read here.'],
    ['0.AAAAAAAA', 'The link is of version 0, and version 1 is read here.'],
    ['1.', 'The link is cut off or has characters that do not belong in it.'],
    ['1.AA%20AA', 'The link is cut off or has characters that do not belong in it.'],
    ['1.AAAAAAAAAAAA', 'The link was changed or cut on the way: its checksum does not fit.'],
    [`1.${'A'.repeat(70_000)}`, 'The link is longer than any that is made here.'],
    [forged(deflateRawSync('{"script": 5}')), 'What the link carries is not a dive.'],
    [forged(deflateRawSync('not json')), 'What the link carries is not a dive.'],
    [forged(deflateRawSync(`{"script":"x","view":${'['.repeat(20_000)}${']'.repeat(20_000)}}`)), undefined],
    [forged(Buffer.from([0xff, 0xff, 0xff, 0xff, 0xff])), 'What the link carries is not a dive.'],
  ])('%# is refused in words', (text, what) => {
    const decoded = decodeState(text, z.json());
    if (what === undefined) expect(decoded.ok === false || decoded.state.script === 'x').toBe(true);
    else expect(decoded).toMatchObject({ ok: false, what });
  });

  it('and made to swell is stopped long before it fills the memory', () => {
    const bomb = forged(deflateRawSync(Buffer.alloc(40_000_000, 0x20), { level: 9 }));
    expect(bomb.length).toBeLessThan(60_000);
    expect(decodeState(bomb)).toMatchObject({ ok: false, what: 'What the link carries is not a dive.' });
  });
});

describe('the checksum and the alphabet', () => {
  it('CRC-32 of "123456789" is cbf43926, the check value of the standard', () => {
    expect(crc32(new TextEncoder().encode('123456789'))).toBe(0xcbf43926);
  });

  it('agree with Node’s own on random bytes', () => {
    const random = seeded(SEED);
    for (let length = 0; length < 70; length += 1) {
      const bytes = Uint8Array.from({ length }, () => Math.floor(random() * 256));
      expect(crc32(bytes)).toBe(nodeCrc32(bytes));
      expect(base64UrlOfBytes(bytes)).toBe(Buffer.from(bytes).toString('base64url'));
      expect(bytesOfBase64Url(Buffer.from(bytes).toString('base64url'))).toEqual(bytes);
    }
  });
});
