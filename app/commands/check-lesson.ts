import { readFileSync } from 'node:fs';
import { cautions } from '@/content/cautions';
import { knownNames } from '../stage/known-names';
import { printFault } from '@/lib/lesson/checking/fault';
import { readLesson } from '@/lib/lesson/read-lesson';
import { readGlossary } from '../lessons/read-content';

/** Checks lessons: every fault on a line of its own, `FILE:LINE: what is wrong and how to mend it`. */
const files = process.argv.slice(2);
if (files.length === 0) {
  console.error('Name the lessons to check: npm run --silent check-lesson -- content/lessons/04-no-stop-time.yaml');
  process.exit(2);
}

const known = knownNames(readGlossary());
console.log(cautions.general);
let faulty = false;
for (const file of files) {
  const read = readLesson(readFileSync(file, 'utf8'), { known, draws: 30 });
  if (read.ok) console.log(`${file}: nothing wrong.`);
  else {
    faulty = true;
    for (const fault of read.faults) console.error(printFault(file, fault));
  }
}
process.exit(faulty ? 2 : 0);
