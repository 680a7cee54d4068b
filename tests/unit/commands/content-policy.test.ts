import { describe, expect, it } from 'vitest';
import { withPolicy } from '@/app/commands/site/content-policy';

/** The example of Content Security Policy Level 3 (W3C), section on hashes of inline scripts; from memory. */
const EXAMPLE = { script: "alert('Hello, world.');", hash: "'sha256-qznLcsROx4GACP2dm0UCKCzCG+HiZ1guq6ZZDob/Tng='" };

describe('the policy of a page', () => {
  it('names an inline script by the hash the standard gives for it, once, and no script with an address', () => {
    const page = withPolicy(
      `<html><head></head><body><script src="/a.js"></script><script>${EXAMPLE.script}</script><script id="again">${EXAMPLE.script}</script></body></html>`,
    );
    expect(/script-src ([^;"]*)/.exec(page)?.[1]).toBe(`'self' ${EXAMPLE.hash}`);
  });

  it('stands behind the character set and before all else', () => {
    expect(
      withPolicy('<html><head><meta charSet="utf-8"/><link rel="stylesheet" href="/a.css"/></head></html>'),
    ).toMatch(
      /^<html><head><meta charSet="utf-8"\/><meta http-equiv="Content-Security-Policy" content="[^"<>]+"\/><link/,
    );
  });

  it('hashes a script over several lines as it stands', () => {
    const [one, other] = ['<head></head><script>a\n b</script>', '<head></head><script>a\n  b</script>'].map(
      withPolicy,
    );
    expect(/sha256-[^']+/.exec(one!)?.[0]).not.toBe(/sha256-[^']+/.exec(other!)?.[0]);
  });

  it('is refused a page that has no place for it', () => {
    expect(() => withPolicy('<p>no head</p>')).toThrow(/without a head/);
  });
});
