/** The candidate spelt most like a word, or nothing when none is close enough to have been meant. */
export function nearest(word: string, candidates: readonly string[]): string | undefined {
  let best: string | undefined;
  let fewest = Infinity;
  for (const candidate of candidates) {
    const allowed = Math.min(fewest - 1, Math.floor(Math.max(word.length, candidate.length) / 3));
    if (Math.abs(word.length - candidate.length) > allowed) continue;
    const distance = slips(word, candidate);
    if (distance <= allowed) {
      best = candidate;
      fewest = distance;
    }
  }
  return best;
}

/** How many letters are missing, extra, wrong or swapped with a neighbour (optimal string alignment distance). */
function slips(one: string, other: string): number {
  let beforeLast: number[] = [];
  let last = Array.from({ length: other.length + 1 }, (_, j) => j);
  for (let i = 1; i <= one.length; i++) {
    const row = [i];
    for (let j = 1; j <= other.length; j++) {
      const wrong = one[i - 1] === other[j - 1] ? 0 : 1;
      let fewest = Math.min(last[j]! + 1, row[j - 1]! + 1, last[j - 1]! + wrong);
      if (i > 1 && j > 1 && one[i - 1] === other[j - 2] && one[i - 2] === other[j - 1])
        fewest = Math.min(fewest, beforeLast[j - 2]! + 1);
      row.push(fewest);
    }
    beforeLast = last;
    last = row;
  }
  return last[other.length]!;
}
