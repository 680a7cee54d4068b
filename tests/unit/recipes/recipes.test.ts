// @module-tag in-turn
import { spawnSync } from 'node:child_process';
import { cpSync, mkdtempSync, readFileSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';

/*
 * What the guide says of adding, followed to the letter in a copy of the house: the code it shows, in the places it
 * names, and nothing else.
 */

const guide = readFileSync('DEVELOPERS.md', 'utf8');
let copy: string;

const COPIED = ['app', 'lib', 'content', 'tests/laws/any-of-schema.ts', 'package.json', 'tsconfig.json'];

/** Puts lines into a file of the copy before or after a line that is there once. */
function insert(file: string, where: 'before' | 'after', line: string, text: string): void {
  const path = join(copy, file);
  const lines = readFileSync(path, 'utf8').split('\n');
  const found = lines.flatMap((one, index) => (one === line ? [index] : []));
  if (found.length === 0) throw new Error(`${file} has no line “${line}”`);
  lines.splice(where === 'before' ? found[0]! : found[0]! + 1, 0, text);
  writeFileSync(path, lines.join('\n'));
}

function run(...command: string[]): { status: number | null; output: string } {
  const { status, stdout, stderr } = spawnSync(process.execPath, command, { cwd: copy, encoding: 'utf8' });
  return { status, output: `${stdout}${stderr}` };
}

/** What a piece of TypeScript in the copy prints as JSON. */
function ask(code: string): unknown {
  writeFileSync(join(copy, 'probe.ts'), code);
  const { status, output } = run('--import', 'tsx', 'probe.ts');
  if (status !== 0) throw new Error(output);
  return JSON.parse(output);
}

const RULE = `import { eventKind } from './event';
import { rule } from './rule';
import { amount, onOff } from './settings/setting';

const minuteTold = eventKind({
  kind: 'minute-told',
  rule: 'minuteBell',
  meaning: 'The bell of the first minutes has rung.',
  say: () => 'the bell rings.',
});

/** Rings once the dive has lasted for a while. */
export const minuteBell = rule({
  id: 'minuteBell',
  title: 'A bell',
  reason: 'A made-up rule, so that the guide is tried: a bell that rings once in each dive.',
  standing: 'illustrative',
  settings: { on: onOff(false), afterS: amount(60, 10, 600) },
  events: [minuteTold],
  begin: () => ({ underS: 0 }),
  step(state, now, { on, afterS }, unit) {
    if (now.diveStarts) state.underS = 0;
    const before = state.underS;
    state.underS += now.elapsedS;
    if (on && before < afterS && state.underS >= afterS) unit.tell(minuteTold, now.timeS, {});
  },
});
`;

const PICTURE = `'use client';

import { sayDepth } from '@/lib/quantity/depth';
import { printClock } from '@/lib/quantity/duration';
import { Levels } from '../../pictures/axes/Levels';
import { columnPath } from '../../pictures/axes/time-columns';
import { TimeGround } from '../../pictures/axes/TimeGround';
import { timePicture } from '../../pictures/axes/time-picture';
import { TimePlot } from '../../pictures/axes/TimePlot';
import { PictureFrame } from './PictureFrame';
import { usePicture } from './use-picture';
import styles from '../../pictures/pictures.module.css';

/** Water pressure over the dive. */
export function NewFigure() {
  const { ref, scene, sample, cursorS, width, height, units, onCursor, view } = usePicture(() => 180);
  const { timeline } = scene;
  const frame = timePicture(scene, width, height, { top: 16, bottom: 28 }, view);
  const y = (bar: number) => frame.inner.height - (bar / 6) * frame.inner.height;
  const path = columnPath(
    frame.columns,
    (at) => frame.x(timeline.timeS[at]!),
    (column) => y(timeline.ambientBar[frame.columns[column]!]!),
  );
  return (
    <PictureFrame
      id="new"
      title="Water"
      sentence={\`\${timeline.ambientBar[sample]!.toFixed(1)} bar surround the diver at \${sayDepth(timeline.depthM[sample]!, units)}.\`}
      columns={[{ heading: 'Time', cell: (at: number) => printClock(timeline.timeS[at]!) }]}
      rows={() => [...frame.columns]}
    >
      <div ref={ref} className={styles.canvas}>
        <TimePlot
          {...{ frame, width, height, cursorS, onCursor }}
          tip={({ sample: at }) => ({ lines: [\`\${timeline.ambientBar[at]!.toFixed(1)} bar\`] })}
        >
          <TimeGround frame={frame}>
            <Levels width={frame.inner.width} levels={[0, 2, 4].map((bar) => ({ y: y(bar), text: \`\${bar} bar\` }))} />
            <path d={path} className={styles.ceiling} />
          </TimeGround>
        </TimePlot>
      </div>
    </PictureFrame>
  );
}
`;

beforeAll(() => {
  copy = mkdtempSync(join(tmpdir(), 'halftime-recipes-'));
  for (const name of COPIED) cpSync(name, join(copy, name), { recursive: true });
  // What the site's builder writes for the compiler, which may not have run here yet.
  writeFileSync(
    join(copy, 'next-env.d.ts'),
    '/// <reference types="next" />\n/// <reference types="next/image-types/global" />\n',
  );
  symlinkSync(join(process.cwd(), 'node_modules'), join(copy, 'node_modules'));
});
afterAll(() => rmSync(copy, { recursive: true, force: true }));

describe('the guide, followed in a copy of the house,', () => {
  it('makes a setting of the script of one entry: read, written, explained, usual, and drawn by the round trip', () => {
    const entry = /\*\*A setting of the script\*\*[^`]*(?:`[^`]*`[^`]*)*?```ts\n(.*?)```/s.exec(guide)![1]!.trimEnd();
    insert('lib/dive/script/settings/fields.ts', 'before', '  gas: field({', entry);
    const told = ask(`
      import fc from 'fast-check';
      import * as z from 'zod';
      import { defaultSettings } from './lib/dive/default-settings';
      import { parseScript, writeScript } from './lib/dive/script';
      import { scriptReference } from './lib/dive/script-reference';
      import { FIELDS } from './lib/dive/script/settings/fields';
      import { anyOf } from './tests/laws/any-of-schema';
      const drawn = fc.sample(anyOf((FIELDS as any).currentMMin.schema(z)), { numRuns: 50, seed: 1 });
      const read = parseScript('drift: 12 m/min\\ndescend to 18 m at 18 m/min\\nascend to surface at 9 m/min\\n');
      const dive = read.ok ? { ...read.dive, lines: [] } : undefined;
      const again = dive && parseScript(writeScript(dive));
      console.log(JSON.stringify({
        usual: (defaultSettings() as any).currentMMin,
        read: (dive?.settings as any)?.currentMMin,
        again: again?.ok && (again.dive.settings as any).currentMMin,
        written: dive && writeScript(dive).split('\\n').filter((line) => line.startsWith('current')),
        help: scriptReference.find(({ name }) => name === 'current')?.help,
        draws: new Set(drawn).size > 10,
        refused: parseScript('current: 90 m/min\\ndescend to 18 m at 18 m/min\\n').ok,
      }));`);
    expect(told).toEqual({
      usual: 6,
      read: 12,
      again: 12,
      written: ['current: 12 m/min'],
      help: 'How fast the water carries the diver along.',
      draws: true,
      refused: false,
    });
  });

  it('makes a rule of one file and one line: its settings, its events and their meanings are known everywhere', () => {
    writeFileSync(join(copy, 'lib/rules/minute-bell.ts'), RULE);
    insert('lib/rules/all.ts', 'before', '  flyingWait,', '  minuteBell,');
    insert(
      'lib/rules/all.ts',
      'before',
      "import { lockOut } from './lock-out';",
      "import { minuteBell } from './minute-bell';",
    );
    const told = ask(`
      import { parseScript } from './lib/dive/script';
      import { computeTimeline } from './lib/dive/timeline';
      import { DEFAULT_RULES, EVENT_KINDS } from './lib/rules/all';
      import { ruleSettingsSchema } from './lib/rules/settings/rule-settings';
      import { GUIDE_PARTS } from './app/commands/guide-parts';
      console.log(JSON.stringify({
        usual: DEFAULT_RULES.minuteBell,
        meaning: EVENT_KINDS['minute-told'],
        checked: ruleSettingsSchema.safeParse({ minuteBell: { on: true, afterS: 5 } }).success,
        taken: ruleSettingsSchema.safeParse({ minuteBell: { on: true } }).success,
        guide: GUIDE_PARTS.find(({ name }) => name === 'events')!.make([]).includes('minute-told'),
      }));`);
    expect(told).toEqual({
      usual: { on: false, afterS: 60 },
      meaning: 'The bell of the first minutes has rung.',
      checked: false,
      taken: true,
      guide: true,
    });
  });

  it('adds a picture, a ready dive and a term, and all of it fits by type', { timeout: 180_000 }, () => {
    insert('app/pictures/picture-ids.ts', 'after', "  'helium',", "  'new',");
    expect(PICTURE.split('\n').length).toBeLessThanOrEqual(55);
    writeFileSync(join(copy, 'app/stage/figures/NewFigure.tsx'), PICTURE);
    const list = 'app/stage/figures/all.ts';
    insert(
      list,
      'after',
      "import { PictureWaiting } from './PictureWaiting';",
      "import { NewFigure } from './NewFigure';",
    );
    insert(
      'app/stage/what-tells.ts',
      'before',
      "    helium: ['heliumBar', 'nitrogenBar', 'tensionBar'],",
      "    new: ['ambientBar'],",
    );
    insert(list, 'before', '  helium: {', "  new: { title: 'A new one', Figure: NewFigure, wide: true },");
    insert(
      'content/scenarios/scenarios.ts',
      'after',
      'export const scenarios: readonly [Scenario, ...Scenario[]] = [',
      `  {
    id: 'new', title: 'New', shows: 'A new dive.', script: 'descend to 9 m at 9 m/min\\n', stillS: 60,
    inFeet: { title: 'New', shows: 'A new dive.', script: 'descend to 30 ft at 30 ft/min\\n' },
  },`,
    );
    const glossary = join(copy, 'content/glossary.yaml');
    writeFileSync(glossary, `${readFileSync(glossary, 'utf8')}- id: new-term\n  term: new\n  means: A new term.\n`);
    const told = ask(`
      import { readFileSync } from 'node:fs';
      import { scenarios } from './content/scenarios/scenarios';
      import { readyDive } from './app/parts/ready-dives';
      import { readGlossary } from './app/lessons/read-content';
      import { PICTURE_IDS } from './app/pictures/picture-ids';
      console.log(JSON.stringify({
        dive: readyDive('new')?.title,
        term: readGlossary().some(({ id }) => id === 'new-term'),
        picture: (PICTURE_IDS as readonly string[]).includes('new'),
      }));`);
    expect(told).toEqual({ dive: 'New', term: true, picture: true });
    expect(run('node_modules/typescript-native/bin/tsc', '--noEmit', '--incremental', 'false')).toEqual({
      status: 0,
      output: '',
    });
  });
});
