import { tenth } from './time-columns';

/** A round mark about a place, a lozenge once its compartment is past a limit, or a triangle of another dive. */
export type MarkShape = 'round' | 'lozenge' | 'triangle';

const LOZENGE_WIDTH = 1.12;
const LOZENGE_HEIGHT = 1.3;
const TRIANGLE_HALF = 1.25;
const TRIANGLE_TOP = 1.5;

/** One mark as a path. */
export function markPath(shape: MarkShape, x: number, y: number, radius: number): string {
  if (shape === 'round') {
    return `M${tenth(x - radius)},${tenth(y)}a${radius},${radius} 0 1 0 ${2 * radius},0a${radius},${radius} 0 1 0 ${-2 * radius},0Z`;
  }
  if (shape === 'triangle') {
    const side = tenth(radius * TRIANGLE_HALF);
    return `M${tenth(x)},${tenth(y - radius * TRIANGLE_TOP)}L${tenth(x + side)},${tenth(y + radius)}h${-2 * side}Z`;
  }
  const half = tenth(radius * LOZENGE_WIDTH);
  const tall = tenth(radius * LOZENGE_HEIGHT);
  return `M${tenth(x)},${tenth(y - tall)}l${half},${tall}l${-half},${tall}l${-half},${-tall}Z`;
}

/** The lower part of a mark, up to a share 0–1 of its height: the nitrogen in it, where the rest is helium. */
export function markPartPath(shape: MarkShape, x: number, y: number, radius: number, share: number): string {
  if (share <= 0) return '';
  if (share >= 1) return markPath(shape, x, y, radius);
  if (shape === 'round') {
    const level = radius * (1 - 2 * share);
    const half = Math.sqrt(radius * radius - level * level);
    return `M${tenth(x - half)},${tenth(y + level)}A${radius},${radius} 0 ${share > 0.5 ? 1 : 0} 0 ${tenth(x + half)},${tenth(y + level)}Z`;
  }
  const tall = radius * LOZENGE_HEIGHT;
  const wide = radius * LOZENGE_WIDTH;
  const level = tall * (1 - 2 * share);
  const half = wide * (1 - Math.abs(level) / tall);
  const shoulders = level < 0 ? [`L${tenth(x - wide)},${tenth(y)}`, `L${tenth(x + wide)},${tenth(y)}`] : ['', ''];
  return `M${tenth(x - half)},${tenth(y + level)}${shoulders[0]}L${tenth(x)},${tenth(y + tall)}${shoulders[1]}L${tenth(x + half)},${tenth(y + level)}Z`;
}
