import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { repositoryRoot } from './site/build-site';
import { guidedTexts } from './guided-texts';

/* npm run guide: makes the parts of the guides anew that come from the code, and says which texts changed. */

for (const [file, text] of await guidedTexts(repositoryRoot)) {
  const path = join(repositoryRoot, file);
  const stale = readFileSync(path, 'utf8') !== text;
  if (stale) writeFileSync(path, text);
  console.log(`${file}: ${stale ? 'made anew' : 'as the code has it'}`);
}
