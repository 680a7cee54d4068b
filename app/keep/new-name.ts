/** A name nobody else has: this also works where a page is not served securely. */
export function newName(): string {
  return `${Date.now().toString(36)}-${Math.random().toString(36).slice(2, 10)}`;
}
