import { spawnSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join, resolve } from 'node:path';
import { describe, expect, it } from 'vitest';
import { floorsOfApp, rooms } from '../walls.mjs';
import { isTooLong, MOST_LINES } from '../run/too-long';

const probes: { readonly filePath: string; readonly code: string }[] = [];
let broken: readonly string[][] | undefined;

/** Names of the rules that each probe breaks, in a house of nothing but probes. */
function lintProbes(): string[][] {
  const cwd = mkdtempSync(join(tmpdir(), 'walls-'));
  const names = probes.map(({ filePath }, nth) => filePath.replace('probe', `probe-${nth}`));
  probes.forEach(({ code }, nth) => {
    const file = join(cwd, names[nth]!);
    mkdirSync(dirname(file), { recursive: true });
    writeFileSync(file, `${code}\n`);
  });
  const linter = [resolve('node_modules/oxlint/bin/oxlint'), '-c', resolve('tests/oxlint.json'), '-f', 'json', '.'];
  const { stdout } = spawnSync(process.execPath, linter, { cwd, encoding: 'utf8' });
  rmSync(cwd, { recursive: true });
  const { diagnostics } = JSON.parse(stdout) as { diagnostics: { filename: string; code: string }[] };
  return names.map((name) => diagnostics.filter(({ filename }) => filename === name).map(({ code }) => code));
}

/**
 * Gives the names of the rules that a line of code breaks where it stands in a file of the repository. All are asked for
 * before the first is answered, so that the linter starts once.
 */
function brokenBy(filePath: string, code: string): () => readonly string[] {
  const nth = probes.push({ filePath, code }) - 1;
  return () => (broken ??= lintProbes())[nth]!;
}

describe('the walls between the parts', () => {
  it.each(
    [
      ['lib/physics/probe.ts', "export { x } from '../tissue/limit';", 'physics sits below tissue'],
      ['lib/tissue/probe.ts', "export { x } from '../rules/safety-stop';", 'tissue never knows the rules'],
      [
        'lib/ascent/probe.ts',
        "export type { X } from '@/lib/rules/safety-stop';",
        'ascent never knows the rules, even as a type',
      ],
      ['lib/dive/probe.ts', "export { x } from '../files/uddf';", 'dive sits below files'],
      ['lib/rules/probe.ts', "export { x } from '../sayings/measures';", 'rules sit below what is said of them'],
      ['lib/sayings/probe.ts', "export { x } from '../lesson/check';", 'sayings sit below lessons'],
      ['lib/rules/probe.ts', "export { x } from '../lesson/check';", 'rules sit below lessons'],
      ['lib/ascent/probe.ts', "export { x } from '../curves/no-stop-curve';", 'ascent sits below curves'],
      [
        'lib/rules/watch/probe.ts',
        "export { x } from '../../working/ceiling';",
        'a folder inside a floor is on that floor',
      ],
      ['lib/dive/probe.ts', "export { x } from '@/app/parts/Button';", 'lib never knows the screen'],
      ['lib/dive/probe.ts', "export { x } from '../../app/parts/Button';", 'nor by a relative path'],
      ['lib/dive/probe.ts', "export { useState } from 'react';", 'no React in lib'],
      ['lib/dive/probe.ts', "export { x } from 'next/navigation';", 'no Next in lib'],
      ['lib/dive/probe.ts', "export { scaleLinear } from 'd3';", 'no d3 in lib'],
      ['lib/dive/probe.ts', "export { select } from 'd3-selection';", 'nor its parts'],
      ['lib/rules/probe.ts', "export { default } from 'temml';", 'formulas are set where workings are'],
      ['lib/files/probe.ts', "export { readFileSync } from 'node:fs';", 'no Node built-ins in lib'],
      ['lib/files/probe.ts', "export { join } from 'path';", 'nor by their old names'],
      ['content/probe.ts', "export { x } from '@/app/parts/Button';", 'content never knows the screen'],
      ['content/probe.ts', "export { parse } from 'yaml';", 'content imports zod alone'],
      ['app/parts/probe.ts', "export { x } from '@/tests/screens/setup';", 'the app never knows the tests'],
      ['app/keep/probe.ts', "export { x } from '../desk/keep/desk-record';", 'what keeps documents knows no screen'],
      ['app/keep/probe.ts', "export { x } from '../stage/desk-store';", 'nor the stage of one'],
      ['app/curves/probe.ts', "export { x } from '../gases/gas-words';", 'a room imports no other room'],
      [
        'app/lessons/player/probe.ts',
        "export { x } from '../../desk/keep/desk-record';",
        'nor from a folder inside it',
      ],
      ['app/bench/probe.tsx', "export type { X } from '@/app/bring/brought';", 'nor a type, nor by its whole path'],
      ['app/class/probe.ts', "export { x } from '../lessons/prepared';", 'nor does a room that is not built yet'],
      ['app/pictures/axes/probe.ts', "export { x } from '../../stage/desk-store';", 'pictures know no store'],
      ['app/stage/units/probe.ts', "export { x } from '../../desk/Desk';", 'the stage knows none of those who use it'],
      ['app/working/probe.ts', "export { x } from '../stage/desk-store';", 'a working is asked from anywhere'],
      ['app/parts/probe.ts', "export { x } from '../pictures/scene';", 'a part knows no dive'],
      ['app/front/probe.ts', "export const x = import('../lessons/prepared');", 'nor what is fetched later'],
      ['lib/tissue/probe.ts', "export const x = import('../rules/safety-stop');", 'in lib too'],
      ['lib/tissue/probe.ts', "export type X = import('../rules/safety-stop').X;", 'nor its types'],
      ['lib/dive/probe.ts', 'export const x = new Date();', 'lib has no clock'],
    ].map(([filePath, code, why]) => [filePath, code, why, brokenBy(filePath!, code!)] as const),
  )('%s may not say %s: %s', (_filePath, _code, _why, broken) => {
    expect(broken()).toEqual(['house(walls)']);
  });

  it.each(
    ['export function one() {}', 'export const one = () => 1;', '// A remark.\nexport function one() {}'].map(
      (code) => [code, brokenBy('lib/dive/probe.ts', code), brokenBy('app/parts/probe.ts', code)] as const,
    ),
  )('asks what lib gives away for a docstring: %s', (_code, inLib, inApp) => {
    expect(inLib()).toEqual(['house(docstrings)']);
    expect(inApp()).toEqual([]);
  });

  it('knows every folder of the app as a room or as a floor below them', () => {
    const folders = readdirSync('app', { withFileTypes: true }).filter((entry) => entry.isDirectory());
    const walled = [...rooms, ...Object.keys(floorsOfApp), 'commands'];
    expect(folders.map(({ name }) => name).filter((name) => !walled.includes(name))).toEqual([]);
  });

  it.each(
    [
      ['lib/dive/probe.ts', 'export const x = document.title;', 'eslint(no-restricted-globals)'],
      ['lib/dive/probe.ts', 'export const x = window.innerWidth;', 'eslint(no-restricted-globals)'],
      ['lib/dive/probe.ts', "export const x = localStorage.getItem('dive');", 'eslint(no-restricted-globals)'],
      ['lib/dive/probe.ts', 'export const x = Date.now();', 'eslint(no-restricted-properties)'],
      ['lib/dive/probe.ts', 'export const x = Math.random();', 'eslint(no-restricted-properties)'],
      ['app/desk/probe.ts', 'const x = 1;\nexport {};', 'eslint(no-unused-vars)'],
      ['tests/unit/probe.ts', 'export const x = (y: unknown) => y == 1;', 'eslint(eqeqeq)'],
      ['app/desk/probe.ts', 'export const x: any = 1;', 'typescript(no-explicit-any)'],
      ['app/desk/probe.ts', 'console.log(1);', 'eslint(no-console)'],
      ['app/desk/probe.ts', '// todo: mend\nexport {};', 'eslint(no-warning-comments)'],
      ['app/desk/probe.ts', 'let x = 1;\nexport { x };', 'eslint(prefer-const)'],
      [
        'app/desk/probe.tsx',
        "import { useState } from 'react';\nexport function X({ y }: { y: boolean }) {\n  if (y) useState(1);\n  return <p />;\n}",
        'react-hooks(rules-of-hooks)',
      ],
      [
        'app/desk/probe.tsx',
        "import { useEffect } from 'react';\nexport function X({ y }: { y: () => void }) {\n  useEffect(() => y(), []);\n  return <p />;\n}",
        'react-hooks(exhaustive-deps)',
      ],
      [
        'app/desk/probe.tsx',
        'export function X() {\n  const Y = () => <p />;\n  return <Y />;\n}',
        'react(static-components)',
      ],
      ['app/desk/probe.tsx', 'export const X = ({ y }: { y: number[] }) => y.map(() => <p />);', 'react(jsx-key)'],
      ['app/desk/probe.tsx', 'export const X = () => <img src="a.png" />;', 'jsx-a11y(alt-text)'],
      ['app/desk/probe.tsx', 'export const X = () => <script src="a.js" />;', 'next(no-sync-scripts)'],
    ].map(([filePath, code, rule]) => [filePath, code, rule, brokenBy(filePath!, code!)] as const),
  )('%s may not say %s: %s', (_filePath, _code, rule, broken) => {
    expect(broken()).toContain(rule);
  });

  it.each(
    [
      ['lib/tissue/probe.ts', "export { x } from '../physics/gas';"],
      ['lib/ascent/probe.ts', "export { x } from '../dive/dive';"],
      ['lib/dive/probe.ts', "export { x } from '../ascent/ceiling';"],
      ['lib/lesson/probe.ts', "export { x } from '../rules/safety-stop';"],
      ['lib/working/probe.ts', "export { x } from '../lesson/check';"],
      ['lib/working/probe.ts', "export { default } from 'temml';"],
      ['lib/files/probe.ts', "export { z } from 'zod';"],
      ['lib/dive/probe.ts', 'export const x = new Date(0);'],
      ['lib/dive/probe.ts', '/** Gives one. */\nexport function one() {}'],
      ['lib/dive/probe.ts', 'export const one = 1;'],
      ['content/probe.ts', "import * as z from 'zod';\nexport const X = z.string();"],
      ['app/desk/probe.ts', "export { x } from '@/lib/dive/dive';"],
      ['app/desk/keep/probe.ts', "export { x } from '../steer/steer-run';"],
      ['app/lessons/probe.ts', "export { x } from '../stage/desk-store';"],
      ['app/probe.tsx', "export { x } from './front/doors';"],
      ['tests/unit/probe.ts', "export { x } from '@/app/parts/Button';"],
    ].map(([filePath, code]) => [filePath, code, brokenBy(filePath!, code!)] as const),
  )('%s may say %s', (_filePath, _code, broken) => {
    expect(broken()).toEqual([]);
  });

  it('refuses a file of more than 300 lines that does not say in its first comment why', () => {
    const lines = 'export {};\n'.repeat(MOST_LINES);
    expect(isTooLong(lines)).toBe(false);
    expect(isTooLong(`${lines}export {};\n`)).toBe(true);
    expect(isTooLong(`/* Long because one table is read as one. */\n${lines}`)).toBe(false);
    expect(isTooLong(`/* A table. */\n/* Long because it is. */\n${lines}`)).toBe(true);
  });
});
