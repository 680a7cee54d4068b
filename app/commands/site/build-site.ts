import { spawnSync } from 'node:child_process';
import { existsSync, readFileSync, readdirSync, statSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { embedPath } from '../../parts/routes';
import { divePage } from './dive-page';
import { finishSite } from './finish-site';
import { STAMP } from './stamp';

export const repositoryRoot = fileURLToPath(new URL('../../..', import.meta.url));
export const siteFolder = join(repositoryRoot, 'out');

const stampFile = join(siteFolder, STAMP);

const sources = ['app', 'lib', 'content', 'package.json', 'package-lock.json', 'tsconfig.json', 'next.config.js'];

/** Newest change, in ms since 1970, of a file or of anything in a folder; folders count too, so a deletion is seen. */
function newestChangeMs(path: string): number {
  if (!existsSync(path)) return 0;
  const stats = statSync(path);
  if (!stats.isDirectory()) return stats.mtimeMs;
  return readdirSync(path).reduce((newest, name) => Math.max(newest, newestChangeMs(join(path, name))), stats.mtimeMs);
}

/** True when `out/` is missing, half-built, or older than a file it is made from. */
export function isSiteStale(): boolean {
  if (!existsSync(stampFile)) return true;
  const builtFromMs = Number(readFileSync(stampFile, 'utf8'));
  return sources.some((source) => newestChangeMs(join(repositoryRoot, source)) > builtFromMs);
}

/** Exports the site into `out/` and finishes it there. Returns the exit code of the export, or 0, or 1 where a lesson is not sound; rejects when finishing fails. */
export async function buildSite(): Promise<number> {
  const beganMs = Date.now();
  // Whoever only serves a site that stands already loads no lessons.
  const { faultsOfShipped } = await import('../../lessons/load-lessons');
  const faults = faultsOfShipped();
  if (faults.length > 0) {
    console.error(faults.join('\n'));
    return 1;
  }
  const next = join(repositoryRoot, 'node_modules/next/dist/bin/next');
  const { status } = spawnSync(process.execPath, [next, 'build'], {
    cwd: repositoryRoot,
    stdio: ['ignore', 'inherit', 'inherit'],
    env: { ...process.env, NODE_ENV: 'production', NEXT_TELEMETRY_DISABLED: '1' },
  });
  if (status !== 0) return status ?? 1;
  await finishSite(siteFolder, { [`${embedPath.slice(1)}index.html`]: await divePage() });
  writeFileSync(stampFile, String(beganMs));
  return 0;
}
