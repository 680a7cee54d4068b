/** A name for a question of a class: no two of a class are alike. */
export function newAskId(): string {
  return `q-${Date.now().toString(36)}-${Math.floor(Math.random() * 46656).toString(36)}`;
}
