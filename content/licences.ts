import * as z from 'zod';

/** What may be shipped with the app, or run beside it, and why. Licences by their SPDX names. */
const Allowed = z.array(z.object({ licence: z.string().min(1), because: z.string().min(1) }));

export const allowedLicences = Allowed.parse([
  { licence: 'MIT', because: 'May be used, changed and passed on, with its notice kept.' },
  { licence: 'ISC', because: 'As MIT, in fewer words.' },
  {
    licence: 'BSD-3-Clause',
    because: 'As MIT, and the authors’ names may not be used to recommend what is made with it.',
  },
  {
    licence: 'Apache-2.0',
    because: 'May be used, changed and passed on with its notices kept; patents of the authors are licensed too.',
  },
  { licence: '0BSD', because: 'No condition at all.' },
  { licence: 'Unlicense', because: 'Given to the public.' },
  {
    licence: 'OFL-1.1',
    because: 'Fonts that may be shipped with anything, and not sold by themselves. None here is renamed or changed.',
  },
]);

/** Beyond those, for what is only run when the site is built, and of which nothing reaches its pages. */
export const allowedAtBuild = Allowed.parse([
  {
    licence: 'LGPL-3.0-or-later',
    because:
      'A library that works on pictures, brought by the page builder; it is neither linked into the app nor used, since the site has no pictures to work on.',
  },
  { licence: 'CC-BY-4.0', because: 'A table of browsers’ abilities, read while the styles are built.' },
]);
