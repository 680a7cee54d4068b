import { parseArgs } from 'node:util';
import { cautions } from '@/content/cautions';
import { import1m } from './import-1m';
import { noStopCurve } from './no-stop-curve';
import { gfContour, scheduleTrimix } from './schedules';
import { timeline3h } from './timeline-3h-1s';
import { waysOutOfDay, waysOutOfHour } from './ways-out';
import { medianOf, timed, type Timed, type Workload } from './workload';

/**
 * `npm run bench`: times of the main work on this machine, one workload after another. With `--json` one line of JSON
 * for each; with `--only NAME` just that one; with `--browser` those that need a real browser and a built site.
 */
const WORKLOADS: readonly Workload[] = [
  timeline3h,
  noStopCurve,
  scheduleTrimix,
  gfContour,
  waysOutOfHour,
  waysOutOfDay,
];
const IMPORT_SAMPLES = 3;

const { values } = parseArgs({
  options: { json: { type: 'boolean' }, only: { type: 'string' }, browser: { type: 'boolean' } },
});

async function* results(): AsyncGenerator<object> {
  if (values.browser) {
    const { dragFrame, dragDay } = await import('./drag-frame');
    for (const drag of [dragFrame, dragDay])
      if (values.only === undefined || values.only === drag.name) yield await drag.run();
    yield* (await import('./screens')).screenTimes(values.only);
    return;
  }
  const wanted = (name: string) => values.only === undefined || values.only === name;
  for (const workload of WORKLOADS) if (wanted(workload.name)) yield timed(workload);
  if (wanted(import1m.name)) yield await timedImport();
  if (wanted('class-300')) yield await (await import('./class-300')).class300.run();
}

async function timedImport(): Promise<Timed> {
  import1m.prepare();
  const times: number[] = [];
  for (let sample = 0; sample < IMPORT_SAMPLES; sample += 1) {
    const start = performance.now();
    await import1m.run();
    times.push(performance.now() - start);
  }
  return { name: import1m.name, medianMs: medianOf(times), samples: IMPORT_SAMPLES };
}

function say(result: object): void {
  if (values.json) {
    console.log(JSON.stringify(result));
    return;
  }
  const [[, name], ...figures] = Object.entries(result) as [[string, string], ...[string, number][]];
  console.log(`${name.padEnd(18)} ${figures.map(([key, value]) => `${key} ${Number(value.toFixed(3))}`).join('  ')}`);
}

if (!values.json) console.error(cautions.general);
let told = 0;
for await (const result of results()) {
  say(result);
  told += 1;
}
if (told === 0) {
  console.error(
    `bench: no workload is called ${values.only}; there are ${[...WORKLOADS, import1m].map(({ name }) => name).join(', ')}, class-300`,
  );
  process.exitCode = 2;
}
