import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { repositoryRoot } from '@/app/commands/build-site';

it('per cent is spelled one way, close to its number, wherever it is read', () => {
  const apart = ['app', 'lib', 'content'].flatMap((folder) =>
    readdirSync(join(repositoryRoot, folder), { recursive: true, withFileTypes: true })
      .filter((entry) => entry.isFile() && /\.(tsx?|md|yaml|json)$/.test(entry.name))
      .flatMap(({ parentPath, name }) =>
        readFileSync(join(parentPath, name), 'utf8')
          .split('\n')
          .filter((line) => /[0-9}][ \u00a0\u202f]%/.test(line) && !/^\s*(\/?\*|\/\/)/.test(line))
          .map((line) => `${parentPath}/${name}: ${line.trim()}`),
      ),
  );
  expect(apart).toEqual([]);
});
