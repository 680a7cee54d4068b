import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { repositoryRoot } from '@/app/commands/site/build-site';

/** Where something is found in what is read: in code, data and texts, less the comments. */
function linesWith(wrong: RegExp): string[] {
  return ['app', 'lib', 'content'].flatMap((folder) =>
    readdirSync(join(repositoryRoot, folder), { recursive: true, withFileTypes: true })
      .filter((entry) => entry.isFile() && /^(?!README).*\.(tsx?|md|yaml|json)$/.test(entry.name))
      .flatMap(({ parentPath, name }) =>
        readFileSync(join(parentPath, name), 'utf8')
          .split('\n')
          .filter((line) => wrong.test(line) && !/^\s*(\/?\*|\/\/)/.test(line))
          .map((line) => `${parentPath}/${name}: ${line.trim()}`),
      ),
  );
}

it('per cent is spelled one way, close to its number, wherever it is read', () => {
  expect(linesWith(/[0-9}][ \u00a0\u202f]%/)).toEqual([]);
});

it('apostrophes are the curved ones wherever they are read', () => {
  expect(linesWith(/\p{L}'\p{L}/u)).toEqual([]);
});
