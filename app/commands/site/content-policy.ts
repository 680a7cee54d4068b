import { createHash } from 'node:crypto';

/**
 * What every page may do: run the scripts of its own origin and the inline ones it was built with, and nothing else.
 * Pictures of the page's own making come as `data:` and `blob:`, and so do the fonts inside them.
 */
const ALLOWED = {
  'default-src': "'none'",
  'style-src': "'self'",
  'img-src': "'self' data: blob:",
  'font-src': "'self' data:",
  'connect-src': "'self'",
  'worker-src': "'self'",
  'manifest-src': "'self'",
  'object-src': "'none'",
  'base-uri': "'none'",
  'form-action': "'none'",
};

const INLINE_SCRIPT = /<script(?![^>]*\ssrc=)[^>]*>([^]*?)<\/script>/g;

/** The name of the character set, if it is there: it has to come within a page's first kilobyte, and fetches nothing. */
const START_OF_HEAD = /<head[^>]*>(?:<meta charset=[^>]*>)?/i;

/**
 * A page with its content security policy at the start of its head, which names each inline script of the page by what
 * is in it. Throws where a page has no head.
 */
export function withPolicy(page: string): string {
  if (!START_OF_HEAD.test(page)) throw new Error('A page without a head can be given no policy.');
  const inline = new Set(Array.from(page.matchAll(INLINE_SCRIPT), ([, script]) => `'sha256-${sha256(script!)}'`));
  const scripts = ["'self'", ...inline].join(' ');
  const policy = Object.entries({ ...ALLOWED, 'script-src': scripts })
    .map((rule) => rule.join(' '))
    .join('; ');
  return page.replace(
    START_OF_HEAD,
    (start) => `${start}<meta http-equiv="Content-Security-Policy" content="${policy}"/>`,
  );
}

function sha256(text: string): string {
  return createHash('sha256').update(text).digest('base64');
}
