import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { repositoryRoot } from '../../app/commands/site/build-site';
import { isTooLong } from './too-long';

/* No file over 300 lines without a reason in its first comment. */

const found = ['app', 'lib', 'content', 'tests'].flatMap((folder) =>
  readdirSync(join(repositoryRoot, folder), { recursive: true, encoding: 'utf8' })
    .filter((name) => /\.(ts|tsx|mjs|css)$/.test(name))
    .map((name) => `${folder}/${name}`)
    .filter((file) => isTooLong(readFileSync(join(repositoryRoot, file), 'utf8'))),
);
for (const file of found)
  console.error(`${file} has over 300 lines. Split it, or say "Long because …" in its first comment.`);
process.exitCode = found.length === 0 ? 0 : 1;
