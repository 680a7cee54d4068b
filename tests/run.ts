import { spawnSync } from 'node:child_process';
import { existsSync, mkdirSync, readFileSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { repositoryRoot } from '../app/commands/build-site';

interface Step {
  heading: string;
  /** Script under node_modules, or a path in the repository, followed by its arguments. */
  command: string[];
  /** Name of the JSON report the step writes, when it counts tests. */
  report?: string;
}

const reportsFolder = join(repositoryRoot, 'node_modules/.cache/halftime/reports');

const vitest = (config: string, report: string): string[] => [
  'node_modules/vitest/vitest.mjs',
  'run',
  '--config',
  config,
  '--reporter=default',
  '--reporter=json',
  `--outputFile.json=${join(reportsFolder, report)}`,
];

const steps: Step[] = [
  { heading: 'Types: routes', command: ['node_modules/next/dist/bin/next', 'typegen'] },
  { heading: 'Types: check', command: ['node_modules/typescript-native/bin/tsc', '--noEmit'] },
  {
    heading: 'Lint',
    command: [
      'node_modules/eslint/bin/eslint.js',
      '--config',
      'tests/eslint.config.mjs',
      '--max-warnings',
      '0',
      'app',
      'lib',
      'tests',
      'content',
    ],
  },
  {
    heading: 'Unit, published, laws, screens',
    command: vitest('tests/vitest.config.ts', 'vitest.json'),
    report: 'vitest.json',
  },
  { heading: 'Build', command: ['--import', 'tsx', 'app/commands/build.ts'] },
  { heading: 'Browser', command: vitest('tests/vitest.browser.config.ts', 'browser.json'), report: 'browser.json' },
];

/** Tests passed and failed according to a Vitest JSON report; nothing when the step died before writing one. */
function countTests(report: string): { passed: number; failed: number } {
  const file = join(reportsFolder, report);
  if (!existsSync(file)) return { passed: 0, failed: 0 };
  const { numPassedTests, numFailedTests } = JSON.parse(readFileSync(file, 'utf8')) as {
    numPassedTests: number;
    numFailedTests: number;
  };
  return { passed: numPassedTests, failed: numFailedTests };
}

function run(command: string[]): boolean {
  const { status } = spawnSync(process.execPath, command, {
    cwd: repositoryRoot,
    stdio: ['ignore', 'inherit', 'inherit'],
    env: { ...process.env, NEXT_TELEMETRY_DISABLED: '1' },
  });
  return status === 0;
}

rmSync(reportsFolder, { recursive: true, force: true });
mkdirSync(reportsFolder, { recursive: true });

let passed = 0;
let failed = 0;
for (const [index, { heading, command, report }] of steps.entries()) {
  console.log(`\n━━ ${index + 1} of ${steps.length} · ${heading} ━━`);
  const ok = run(command);
  const counts = report === undefined ? { passed: 0, failed: 0 } : countTests(report);
  passed += counts.passed;
  // A step that fails without a failed test to show for it (types, lint, build, a crash) counts as one.
  failed += ok ? counts.failed : Math.max(1, counts.failed);
  if (!ok || counts.failed > 0) {
    console.log(`\n━━ Stopped: ${heading} failed ━━`);
    process.exitCode = 1;
    break;
  }
}
console.log(`\n${passed} passed, ${failed} failed`);
