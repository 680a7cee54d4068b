import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { siteFolder } from '@/app/commands/site/build-site';
import { filesOf } from '@/app/commands/site/finish-site';
import { lessonPath } from '@/app/parts/lesson-paths';
import { routes } from '@/app/parts/routes';
import { drawn } from './drawn';
import { firstLoadKB, firstScripts, scriptOf } from './first-load';
import { builtPages } from './pages';
import { arrive, browserVisits } from './visit';

/** About what React and the framework weigh on a page with nothing of ours; measured in a bare export. */
const BARE_KB = 132;

/**
 * The most a page may ask for before it answers, gzipped. A page is held to the first kind that fits it. On a phone's
 * 4G of some 10 Mbit/s, 200 kB are there in less than a fifth of a second, and read in about as long.
 */
const CEILINGS: readonly { readonly pages: RegExp; readonly mostKB: number; readonly because: string }[] = [
  {
    pages: /^\/lessons\/(\d\d-[^/]+)\/$/,
    mostKB: 170,
    because: 'a lesson is words and questions first; dives are fetched as its steps ask for them',
  },
  {
    pages: /^\/(desk|gases|gases\/table)\/$/,
    mostKB: 200,
    because: 'the model itself has to be there: a script, a dive, its readings',
  },
  { pages: /^\/curves\/$/, mostKB: 200, because: 'the model itself has to be there, and its first plate' },
  {
    pages: /^\/(bench|bring)\/$/,
    mostKB: 200,
    because:
      'where a run is written or a file chosen, and the checker of what was kept; what is made of it comes after',
  },
  { pages: /./, mostKB: 150, because: 'words and links: hardly more than the framework' },
];

const kindOf = (page: string) => CEILINGS.find(({ pages }) => pages.test(page))!;

describe('what a page asks for before it answers', () => {
  it.each(builtPages().map((page) => ({ page, ...kindOf(page) })))(
    'is within $mostKB kB on $page: $because',
    ({ page, mostKB }) => {
      const weight = firstLoadKB(page);
      expect(weight).toBeGreaterThan(BARE_KB - 30);
      expect(weight).toBeLessThanOrEqual(mostKB);
    },
  );

  // Each is told by words of its own that no minifying changes.
  it.each([
    { library: 'the formula reader, mathjs', words: /OperatorNode/ },
    { library: 'the formula setter, Temml', words: /temml-error/ },
    { library: 'the YAML reader of lessons', words: /YAMLParseError/ },
    { library: 'the reader of other programs’ files', words: /unclosed tag/ },
  ])('never has $library in it, though the site has', ({ words }) => {
    const scripts = filesOf(siteFolder).filter((file) => file.endsWith('.js'));
    expect(scripts.filter((file) => words.test(scriptOf(join('/', file)).text))).not.toEqual([]);
    const asked = builtPages().filter((page) => firstScripts(page).some((source) => words.test(scriptOf(source).text)));
    expect(asked).toEqual([]);
  });
});

/** More than this of the window moving is what a reader notices; what is drawn later keeps its place. */
const MOST_SHIFT = 0.01;

describe('a page that opens', () => {
  const visit = browserVisits();

  it.each(
    // Each in one window, other runs in the other.
    [routes.home.path, routes.desk.path, lessonPath('04-no-stop-time')].flatMap((path) =>
      drawn(
        [
          { path, width: 1440, height: 900 },
          { path, width: 390, height: 844 },
        ],
        1,
      ),
    ),
  )('stays where it is: $path at $width px', async ({ path, width, height }) => {
    const { page } = await visit({ viewport: { width, height } });
    await arrive(page, path);
    await page.waitForTimeout(1000);
    const shifts = await page.evaluate(
      () =>
        new Promise<{ value: number; moved: string[] }[]>((done) => {
          type Shift = PerformanceEntry & { value: number; hadRecentInput: boolean; sources: { node?: Node }[] };
          new PerformanceObserver((list) => done(told(list.getEntries() as Shift[]))).observe({
            type: 'layout-shift',
            buffered: true,
          });
          // Nothing is ever told where nothing moved.
          setTimeout(() => done([]), 500);
          const told = (entries: Shift[]) =>
            entries
              .filter(({ hadRecentInput }) => !hadRecentInput)
              .map(({ value, sources }) => ({
                value,
                moved: sources.map(({ node }) => (node instanceof Element ? `${node.tagName} ${node.className}` : '')),
              }));
        }),
    );
    const total = shifts.reduce((sum, { value }) => sum + value, 0);
    expect(total, JSON.stringify(shifts)).toBeLessThanOrEqual(MOST_SHIFT);
  });
});
