/** In place of the site's: a page of its own has no desk to take a dive to. */
export function TryOnDesk() {
  return null;
}
