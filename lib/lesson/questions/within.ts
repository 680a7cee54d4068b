/** Whether an answer is near enough to the truth; one typed in feet comes back with its last digits rounded. */
export function isWithin(value: number, truth: number, within: number): boolean {
  return Math.abs(value - truth) <= within + 1e-9;
}
