/** What is said where work of ours fails. What failed exactly goes to the console, for whoever looks after the project. */
export function ourFault(error: unknown): string {
  // oxlint-disable-next-line no-console -- it is written there for whoever looks after the project
  console.error(error);
  return 'This could not be worked out. The fault is ours, not yours: reload the page and try again. Whoever looks after the project finds more in this browser’s console.';
}
