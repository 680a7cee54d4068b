import { sayDepth } from '@/lib/quantity/depth';
import type { UnitSystem } from '@/lib/quantity/unit-system';
import type { Scene } from './scene';

const LONGEST = 80;

/** What a dive is called until it is given a name: the first remark of its script, or else how deep it goes. */
export function diveTitle(script: string, scene: Scene, units: UnitSystem): string {
  const remark = firstRemark(script);
  if (remark) return remark;
  const deepestM = scene.timeline.legs.reduce((deepest, leg) => Math.max(deepest, leg.toM), 0);
  return `A dive to ${sayDepth(deepestM, units)}`;
}

/** The first remark that has a line to itself. */
export function firstRemark(script: string): string | undefined {
  const remark = /^[ \t]*#[#\s]*(\S.*)$/m.exec(script)?.[1]?.trim();
  if (remark === undefined || remark.length <= LONGEST) return remark;
  return `${remark.slice(0, LONGEST - 1).trimEnd()}…`;
}

/**
 * A script that carries a title: as the remark it begins with, in place of one that stands there. It comes back as it was
 * where it is called so already.
 */
export function withTitle(script: string, title: string): string {
  if (firstRemark(script) === title) return script;
  const written = `# ${title.replace(/\s+/g, ' ').replace(/^[#\s]+/, '')}`;
  const lines = script.split('\n');
  const first = lines.findIndex((line) => line.trim() !== '');
  if (first >= 0 && /^\s*#/.test(lines[first]!)) lines[first] = written + (lines[first]!.endsWith('\r') ? '\r' : '');
  else lines.unshift(written + (lines.length > 1 && lines[0]!.endsWith('\r') ? '\r' : ''));
  return lines.join('\n');
}
