/**
 * The number all chance in one run of the tests comes from: a new one each time, or the one in `SEED`, so that a run can be
 * had again. The configurations of Vitest hand it to every worker.
 */
export const runSeed = given(process.env['SEED']) ?? Math.floor(Math.random() * 2 ** 31);
// A configuration is read once for each project in it.
process.env['SEED'] = String(runSeed);

/** @param {string | undefined} seed */
function given(seed) {
  if (seed === undefined || seed === '') return undefined;
  if (!/^\d{1,10}$/.test(seed) || Number(seed) >= 2 ** 31)
    throw new Error(`SEED is "${seed}", and has to be a whole number below ${2 ** 31}.`);
  return Number(seed);
}

/** Said once a run: a global setup of Vitest. */
export default function sayRunSeed() {
  console.log(`Chance in this run comes from SEED=${runSeed}`);
}
