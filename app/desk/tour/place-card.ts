export interface Box {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

const CORNERS = ['bottom left', 'bottom right', 'top right', 'top left'] as const;
export type Corner = (typeof CORNERS)[number];

/** How far from the edges of the window, px. */
const MARGIN_PX = 16;

/** The corner of the window in which a card covers least of what is to be seen; the first of equals. */
export function clearestCorner(
  card: { width: number; height: number },
  window: { width: number; height: number },
  seen: readonly Box[],
): Corner {
  const covered = CORNERS.map((corner) => {
    const box = boxIn(corner, card, window);
    return seen.reduce((sum, one) => sum + shared(box, one), 0);
  });
  return CORNERS[covered.indexOf(Math.min(...covered))]!;
}

function boxIn(
  corner: Corner,
  card: { width: number; height: number },
  window: { width: number; height: number },
): Box {
  const left = corner.endsWith('left') ? MARGIN_PX : window.width - MARGIN_PX - card.width;
  const top = corner.startsWith('top') ? MARGIN_PX : window.height - MARGIN_PX - card.height;
  return { left, top, right: left + card.width, bottom: top + card.height };
}

/** The area two boxes share, px². */
function shared(one: Box, other: Box): number {
  const width = Math.min(one.right, other.right) - Math.max(one.left, other.left);
  const height = Math.min(one.bottom, other.bottom) - Math.max(one.top, other.top);
  return Math.max(0, width) * Math.max(0, height);
}
