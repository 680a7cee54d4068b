/** A stretch of time shown in the pictures, s. */
export interface View {
  readonly startS: number;
  readonly endS: number;
}

const SHORTEST_S = 60;

/** The view after zooming by a factor (below 1 is closer) that keeps `aroundS` where it is; undefined for the whole day. */
export function zoomedView(view: View | undefined, endS: number, aroundS: number, factor: number): View | undefined {
  const now = view ?? { startS: 0, endS };
  const around = Math.min(Math.max(aroundS, now.startS), now.endS);
  const lengthS = Math.max(SHORTEST_S, (now.endS - now.startS) * factor);
  if (lengthS >= endS) return undefined;
  const share = (around - now.startS) / (now.endS - now.startS);
  return within({ startS: around - share * lengthS, endS: around + (1 - share) * lengthS }, endS);
}

/** The view moved along by a share of its length. */
export function movedView(view: View | undefined, endS: number, share: number): View | undefined {
  if (!view) return undefined;
  const byS = (view.endS - view.startS) * share;
  return within({ startS: view.startS + byS, endS: view.endS + byS }, endS);
}

function within({ startS, endS }: View, lastS: number): View {
  const lengthS = endS - startS;
  const from = Math.min(Math.max(0, startS), lastS - lengthS);
  return { startS: from, endS: from + lengthS };
}
