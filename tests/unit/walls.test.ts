import { ESLint } from 'eslint';
import { readdirSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { floorsOfApp, rooms } from '../walls.mjs';
import { isTooLong, MOST_LINES } from '../run/too-long';

const cwd = fileURLToPath(new URL('../..', import.meta.url));
const eslint = new ESLint({ cwd, overrideConfigFile: 'tests/eslint.config.mjs' });

/** Names of the rules that a line of code breaks when it stands in a file of the repository. */
async function brokenRules(filePath: string, code: string): Promise<(string | null)[]> {
  const [result] = await eslint.lintText(`${code}\n`, { filePath });
  return result?.messages.map((message) => message.ruleId) ?? [];
}

describe('the walls between the parts', () => {
  it.each([
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
    ['app/lessons/player/probe.ts', "export { x } from '../../desk/keep/desk-record';", 'nor from a folder inside it'],
    ['app/bench/probe.tsx', "export type { X } from '@/app/bring/brought';", 'nor a type, nor by its whole path'],
    ['app/class/probe.ts', "export { x } from '../lessons/prepared';", 'nor does a room that is not built yet'],
    ['app/pictures/axes/probe.ts', "export { x } from '../../stage/desk-store';", 'pictures know no store'],
    ['app/stage/units/probe.ts', "export { x } from '../../desk/Desk';", 'the stage knows none of those who use it'],
    ['app/working/probe.ts', "export { x } from '../stage/desk-store';", 'a working is asked from anywhere'],
    ['app/parts/probe.ts', "export { x } from '../pictures/scene';", 'a part knows no dive'],
  ])('%s may not say %s: %s', async (filePath, code) => {
    expect(await brokenRules(filePath, code)).toEqual(['no-restricted-imports']);
  });

  it('asks every function that lib gives away for a docstring', async () => {
    for (const code of [
      'export function one() {}',
      'export const one = () => 1;',
      '// A remark.\nexport function one() {}',
    ]) {
      expect(await brokenRules('lib/dive/probe.ts', code), code).toEqual(['house/docstrings']);
      expect(await brokenRules('app/parts/probe.ts', code), code).toEqual([]);
    }
    expect(await brokenRules('lib/dive/probe.ts', '/** Gives one. */\nexport function one() {}')).toEqual([]);
    expect(await brokenRules('lib/dive/probe.ts', 'export const one = 1;')).toEqual([]);
  });

  it('knows every folder of the app as a room or as a floor below them', () => {
    const folders = readdirSync('app', { withFileTypes: true }).filter((entry) => entry.isDirectory());
    const walled = [...rooms, ...Object.keys(floorsOfApp), 'commands'];
    expect(folders.map(({ name }) => name).filter((name) => !walled.includes(name))).toEqual([]);
  });

  it('sees through a dynamic import', async () => {
    expect(await brokenRules('app/front/probe.ts', "export const x = import('../lessons/prepared');")).toEqual([
      'no-restricted-syntax',
    ]);
    expect(await brokenRules('lib/tissue/probe.ts', "export const x = import('../rules/safety-stop');")).toEqual([
      'no-restricted-syntax',
    ]);
  });

  it.each([
    ['lib/dive/probe.ts', 'export const x = document.title;', 'no-restricted-globals'],
    ['lib/dive/probe.ts', 'export const x = window.innerWidth;', 'no-restricted-globals'],
    ['lib/dive/probe.ts', "export const x = localStorage.getItem('dive');", 'no-restricted-globals'],
    ['lib/dive/probe.ts', 'export const x = Date.now();', 'no-restricted-properties'],
    ['lib/dive/probe.ts', 'export const x = new Date();', 'no-restricted-syntax'],
    ['lib/dive/probe.ts', 'export const x = Math.random();', 'no-restricted-properties'],
  ])('%s may not say %s, because lib has no DOM, clock, storage or chance', async (filePath, code, rule) => {
    expect(await brokenRules(filePath, code)).toEqual([rule]);
  });

  it.each([
    ['lib/tissue/probe.ts', "export { x } from '../physics/gas';"],
    ['lib/ascent/probe.ts', "export { x } from '../dive/dive';"],
    ['lib/dive/probe.ts', "export { x } from '../ascent/ceiling';"],
    ['lib/lesson/probe.ts', "export { x } from '../rules/safety-stop';"],
    ['lib/working/probe.ts', "export { x } from '../lesson/check';"],
    ['lib/working/probe.ts', "export { default } from 'temml';"],
    ['lib/files/probe.ts', "export { z } from 'zod';"],
    ['lib/dive/probe.ts', 'export const x = new Date(0);'],
    ['content/probe.ts', "import * as z from 'zod';\nexport const X = z.string();"],
    ['app/desk/probe.ts', "export { x } from '@/lib/dive/dive';"],
    ['app/desk/keep/probe.ts', "export { x } from '../steer/steer-run';"],
    ['app/lessons/probe.ts', "export { x } from '../stage/desk-store';"],
    ['app/probe.tsx', "export { x } from './front/doors';"],
    ['tests/unit/probe.ts', "export { x } from '@/app/parts/Button';"],
  ])('%s may say %s', async (filePath, code) => {
    expect(await brokenRules(filePath, code)).toEqual([]);
  });

  it('refuses a file of more than 300 lines that does not say in its first comment why', () => {
    const lines = 'export {};\n'.repeat(MOST_LINES);
    expect(isTooLong(lines)).toBe(false);
    expect(isTooLong(`${lines}export {};\n`)).toBe(true);
    expect(isTooLong(`/* Long because one table is read as one. */\n${lines}`)).toBe(false);
    expect(isTooLong(`/* A table. */\n/* Long because it is. */\n${lines}`)).toBe(true);
  });
});
