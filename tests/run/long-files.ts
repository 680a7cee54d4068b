import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { repositoryRoot } from '../../app/commands/build-site';
import { isTooLong } from './too-long';

/* No file over 300 lines without a reason in its first comment. */

/** Files that are still to be split; one that is short by now has to leave the list. */
const STILL_LONG: readonly string[] = [
  'app/bring/bring.module.css',
  'app/lessons/player/player.module.css',
  'app/lessons/workshop/workshop.module.css',
  'app/pictures/pictures.module.css',
];

const found = ['app', 'lib', 'content', 'tests'].flatMap((folder) =>
  readdirSync(join(repositoryRoot, folder), { recursive: true, encoding: 'utf8' })
    .filter((name) => /\.(ts|tsx|mjs|css)$/.test(name))
    .map((name) => `${folder}/${name}`)
    .filter((file) => isTooLong(readFileSync(join(repositoryRoot, file), 'utf8'))),
);
const wrong = found.filter((file) => !STILL_LONG.includes(file));
const split = STILL_LONG.filter((file) => !found.includes(file));
for (const file of split)
  console.error(`${file} is no longer long: take it out of STILL_LONG in tests/run/long-files.ts.`);
for (const file of wrong)
  console.error(`${file} has over 300 lines. Split it, or say "Long because …" in its first comment.`);
process.exitCode = wrong.length + split.length === 0 ? 0 : 1;
