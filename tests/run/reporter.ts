import { relative } from 'node:path';
import type { TestCase, TestModule, TestSpecification } from 'vitest/node';
import type { Reporter } from 'vitest/reporters';
import { repositoryRoot } from '../../app/commands/site/build-site';
import { COUNT_MARK, type Counts } from './step';

/** Vitest for `tests/run.ts`: what fails is told at once and whole; of what passes only the number. */
export default class RunReporter implements Reporter {
  private readonly counts: Counts = { passed: 0, failed: 0, waiting: 0, files: 0, ofFiles: 0 };

  onTestRunStart(specifications: readonly TestSpecification[]): void {
    this.counts.ofFiles = specifications.length;
    this.say();
  }

  onTestCaseResult(test: TestCase): void {
    const { state, errors } = test.result();
    if (state === 'passed') this.counts.passed += 1;
    if (state !== 'failed') return;
    this.counts.failed += 1;
    this.say();
    tell(`${inRepository(test.module)} > ${test.fullName}`, errors);
  }

  onTestModuleEnd(module: TestModule): void {
    this.counts.files += 1;
    this.counts.waiting += [...module.children.allTests()].filter(
      (test) => !['passed', 'failed'].includes(test.result().state),
    ).length;
    // A file that can't be read, or a suite that can't be set up, has no failed test to show for it.
    const errors = [module, ...module.children.allSuites()].flatMap((one) => [...one.errors()]);
    if (errors.length > 0) {
      this.counts.failed += 1;
      tell(inRepository(module), errors);
    }
    this.say();
  }

  onTestRunEnd(_: readonly TestModule[], unhandled: readonly Told[]): void {
    if (unhandled.length === 0) return;
    this.counts.failed += unhandled.length;
    this.say();
    tell('outside any test', unhandled);
  }

  private say(): void {
    process.stdout.write(`${COUNT_MARK}${JSON.stringify(this.counts)}\n`);
  }
}

interface Told {
  readonly message: string;
  readonly diff?: string | undefined;
  readonly stack?: string | undefined;
}

const inRepository = (module: TestModule): string => relative(repositoryRoot, module.moduleId);

function tell(where: string, errors: readonly Told[]): void {
  const told = errors.map(({ message, diff, stack }) => {
    const place = stack?.split('\n').find((line) => line.includes(`${repositoryRoot}tests/`));
    return [message, diff, place?.trim()].filter(Boolean).join('\n');
  });
  process.stderr.write(`✗ ${where}\n${told.join('\n').replace(/^/gm, '    ')}\n`);
}
