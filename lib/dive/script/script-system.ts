import type { UnitSystem } from '../../quantity/unit-system';
import type { LineRead } from './line';

/** The units a script is written in, judged by its first depth below the surface: feet where that is in feet. */
export function scriptSystem(texts: readonly string[], lines: readonly LineRead[]): UnitSystem {
  for (const [i, read] of lines.entries()) {
    if (read.as !== 'step' || !('depthM' in read.step) || !read.step.depthM?.value) continue;
    return /f/i.test(texts[i]!.slice(...read.step.depthM.span)) ? 'imperial' : 'metric';
  }
  return 'metric';
}
