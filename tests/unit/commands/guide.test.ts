import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { withPart } from '@/app/commands/guide-parts';
import { guidedTexts, sourceFiles } from '@/app/commands/guided-texts';
import { drawHouse, floorsOf, importsOf } from '@/app/commands/house-picture';

describe('the guides', () => {
  it('say what the code says, where they are made from it; npm run guide makes them anew', async () => {
    for (const [file, text] of await guidedTexts(process.cwd())) expect(readFileSync(file, 'utf8'), file).toBe(text);
  });

  it('are short enough to be read', () => {
    expect(Buffer.byteLength(readFileSync('DEVELOPERS.md'))).toBeLessThanOrEqual(12_000);
  });

  it('ask for their marks', () => {
    expect(() => withPart('no marks', 'house', 'x')).toThrow(/has no marks/);
  });
});

describe('the picture of the house', () => {
  const imports = importsOf(sourceFiles(process.cwd()));

  it('has no arrow that runs up', () => {
    const floors = floorsOf(imports);
    const up = [...imports].flatMap(([from, all]) =>
      [...all].filter((to) => floors.get(to)! >= floors.get(from)!).map((to) => `${from} → ${to}`),
    );
    expect(up).toEqual([]);
    for (const low of ['lib/quantity', 'lib/physics', 'content'])
      expect(floors.get(low)).toBeLessThan(floors.get('lib/dive')!);
    for (const folder of floors.keys())
      if (folder.startsWith('app')) expect(floors.get(folder)).toBeGreaterThan(floors.get('lib/quantity')!);
  });

  it('sees imports of every kind, and draws the shortest arrows', () => {
    const drawn = importsOf([
      { path: 'app/desk/Desk.tsx', text: "import { x } from '../parts/x';\nexport type { Y } from '@/lib/dive/y';" },
      { path: 'app/parts/x.ts', text: "export const x = () => import('@/lib/dive/y');\nimport './x.css';" },
      { path: 'app/page.tsx', text: "import { Desk } from './desk/Desk';\nimport z from 'zod';" },
      { path: 'lib/dive/y.ts', text: "import type { Q } from '../quantity/q';" },
      { path: 'lib/quantity/q.ts', text: '' },
    ]);
    expect(drawHouse(drawn)).toBe(
      [
        ' 4  app           ▼ app/desk',
        ' 3  app/desk      ▼ app/parts',
        ' 2  app/parts     ▼ lib/dive',
        ' 1  lib/dive      ▼ lib/quantity',
        ' 0  lib/quantity',
      ].join('\n'),
    );
  });

  it('names the circle where an arrow would run up', () => {
    const circle = importsOf([
      { path: 'lib/rules/a.ts', text: "import '../dive/b';" },
      { path: 'lib/dive/b.ts', text: "import type { A } from '../rules/a';" },
    ]);
    expect(() => floorsOf(circle)).toThrow('An arrow runs up: lib/rules → lib/dive → lib/rules.');
  });
});
