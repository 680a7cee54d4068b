/** The faces of running text and headings, by the names of their files in a built site. */
const FIRST_FACES = /(^|\/)source-(sans-3|serif-4)-latin-wght-normal\.[^/]*woff2$/;

/** Those of a site's files that hold the letters every page is set in. */
export function firstFaces(files: readonly string[]): string[] {
  return files.filter((file) => FIRST_FACES.test(file));
}

/**
 * A page that asks for its faces before its style sheets have been read, so that its first letters are set in them. A
 * face that is late is not put in afterwards (`font-display: optional`): nothing moves under a reader's eyes.
 */
export function withFontsFirst(page: string, faces: readonly string[]): string {
  const links = faces.map((face) => `<link rel="preload" href="/${face}" as="font" type="font/woff2" crossorigin=""/>`);
  return page.replace('<link rel="stylesheet"', (sheet) => links.join('') + sheet);
}
