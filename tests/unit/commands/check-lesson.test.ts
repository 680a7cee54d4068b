import { spawnSync } from 'node:child_process';
import { describe, expect, it } from 'vitest';
import { cautions } from '@/content/cautions';

// What readings prints is held to the same in readings-command.test.ts, and start where a built site is at hand, in tests/browser.
describe('the check-lesson command', () => {
  it('says the caution, and of each lesson whether it is sound', () => {
    const given = [
      '--import',
      'tsx',
      'app/commands/check-lesson.ts',
      'content/lessons/01-pressure.yaml',
      'package.json',
    ];
    const { status, stdout, stderr } = spawnSync(process.execPath, given, { encoding: 'utf8' });
    expect(stdout).toContain(cautions.general);
    expect(stdout).toContain('content/lessons/01-pressure.yaml: nothing wrong.');
    expect(stderr).toMatch(/^package\.json:\d+: /m);
    expect(status).toBe(2);
  });
});
