/** Whether what a page carries is meant to be a question of a lesson. */
export function isStepLink(fragment: string): boolean {
  return /^#?step-\d/.test(fragment);
}
