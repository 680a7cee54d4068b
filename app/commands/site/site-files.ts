import { createHash } from 'node:crypto';
import { readdirSync, readFileSync } from 'node:fs';
import { join, relative, sep } from 'node:path';
import { promisify } from 'node:util';
import { gzip } from 'node:zlib';
import { lookup } from 'mrmime';

/** One file of the site, held in memory: what happens to the folder it came from can't reach an answer under way. */
export interface SiteFile {
  readonly body: Buffer;
  readonly type: string;
  /** An entity tag (RFC 9110) made from what is in the file. */
  readonly tag: string;
  /** Names with a hash of the content in them never change; all others are asked for anew each time. */
  readonly keptFor: string;
  /** The file compressed, worked out once; undefined where that would save nothing. */
  readonly packed: () => Promise<Buffer | undefined>;
}

/** Files by their path from the site's root, with a leading slash. */
export type SiteFiles = ReadonlyMap<string, SiteFile>;

const PACKED_TYPES = /^text\/|javascript|json|xml|yaml|wasm/;
const LEAST_PACKED_BYTES = 1024;
const HASHED = '/_next/static/';
const packing = promisify(gzip);
/** A file is packed once and sent many times. */
const PACKED_TIGHT = { level: 9, memLevel: 9 };

/**
 * Reads a built folder whole. Only files that lie in it are taken: no links that lead out of it, and nothing whose name
 * begins with a dot. Throws the system's own error where a file vanishes meanwhile.
 */
export function readSite(folder: string): SiteFiles {
  const files = new Map<string, SiteFile>();
  for (const entry of readdirSync(folder, { recursive: true, withFileTypes: true })) {
    const path = join(entry.parentPath, entry.name);
    const from = `/${relative(folder, path).split(sep).join('/')}`;
    if (entry.isFile() && !from.includes('/.')) files.set(from, siteFile(from, readFileSync(path)));
  }
  return files;
}

function siteFile(path: string, body: Buffer): SiteFile {
  const type = lookup(path) ?? 'application/octet-stream';
  const isText = PACKED_TYPES.test(type);
  let packed: Promise<Buffer | undefined> | undefined;
  return {
    body,
    type: isText ? `${type}; charset=utf-8` : type,
    tag: createHash('sha256').update(body).digest('base64url').slice(0, 22),
    keptFor: path.startsWith(HASHED) ? 'public, max-age=31536000, immutable' : 'no-cache',
    packed: () =>
      (packed ??=
        isText && body.length >= LEAST_PACKED_BYTES
          ? packing(body, PACKED_TIGHT).then((smaller) => (smaller.length < body.length ? smaller : undefined))
          : Promise.resolve(undefined)),
  };
}

/** The file an address asks for: the file itself, or the page of that name. */
export function fileAt(files: SiteFiles, path: string): SiteFile | undefined {
  const bare = path.replace(/\/+$/, '');
  return path.endsWith('/') ? files.get(`${bare}/index.html`) : named(files, bare);
}

function named(files: SiteFiles, path: string): SiteFile | undefined {
  return files.get(path) ?? files.get(`${path}.html`) ?? files.get(`${path}/index.html`);
}

/** A newer site, with the hashed files of the one before it: pages that are open still ask for those. */
export function withOlderChunks(newer: SiteFiles, older: SiteFiles): SiteFiles {
  const chunks = Array.from(older).filter(([path]) => path.startsWith(HASHED));
  return new Map([...chunks, ...newer]);
}
