import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { join, relative } from 'node:path';
import { fileURLToPath } from 'node:url';
import { deflateRawSync } from 'node:zlib';
import { build, type Plugin, type Rollup } from 'vite';
import { cautions } from '../../../content/cautions';
import { DIVE_PLACE } from '../../../lib/files/links/dive-page';
import { noEvalScript } from '../../parts/no-eval';
import { defaultTheme } from '../../parts/theme';

const root = fileURLToPath(new URL('../../..', import.meta.url));

/** Parts of the site that a page of its own has another for, each by the file it is in. */
const INSTEAD: Readonly<Record<string, string>> = {
  'app/stage/passed-on/SaveDivePage': 'app/alone/instead/nothing.tsx',
  'app/stage/figures/OverlayChooser': 'app/alone/instead/nothing.tsx',
  'app/stage/figures/ProfileHandles': 'app/alone/instead/nothing.tsx',
  'app/stage/figures/StepEditor': 'app/alone/instead/nothing.tsx',
  'app/stage/figures/SavePicture': 'app/alone/instead/nothing.tsx',
  'app/stage/figures/SaveReadings': 'app/alone/instead/nothing.tsx',
  'app/stage/units/SetupEditor': 'app/alone/instead/nothing.tsx',
  'app/stage/why/DeskWorking': 'app/alone/instead/DeskWorking.tsx',
  'app/parts/safe-storage': 'app/alone/instead/safe-storage.ts',
  'app/lessons/player/progress-store': 'app/lessons/own-page/instead/progress-store.ts',
  'app/lessons/player/engine': 'app/lessons/player/predict-answers.ts',
  'app/stage/figures/all': 'app/lessons/own-page/instead/pictures.ts',
  'app/lessons/player/stages': 'app/lessons/own-page/instead/stages.ts',
  'app/lessons/player/TryOnDesk': 'app/lessons/own-page/instead/TryOnDesk.tsx',
};

/** The site's own colours, sizes and letters come before everything; a page may hold a dive or a question of a lesson. */
const ENTRY = 'virtual:dive-page';
const at = (file: string) => JSON.stringify(join(root, file));
const FIRST = `import ${at('app/tokens.css')};
import ${at('app/globals.css')};
import { showPage } from ${at('app/alone/entry.tsx')};
import { showStep } from ${at('app/lessons/own-page/show-step.tsx')};
showPage(showStep);`;

/** What changes the page's selections on being imported. Nothing here selects, and without it what selects is left out too. */
const SELECTING = 'd3-transition';
const NOTHING_SELECTED = 'export const active = undefined, interrupt = undefined, transition = undefined;';

/**
 * What is left out, so that the page stays light: what says a schema as JSON Schema, which no page asks for, and how
 * oxygen is worked out, of which DeskWorking.tsx says that the site tells it.
 */
const LEFT_OUT =
  /[\\/]zod[\\/]v4[\\/]core[\\/](to-json-schema|json-schema-processors)\.js$|[\\/]lib[\\/]working[\\/]oxygen[\\/]/;
const saysNothing = (file: string) =>
  [...readFileSync(file, 'utf8').matchAll(/^export (?:const|function) (\w+)/gm)]
    .map(([, name]) => `export const ${name} = () => undefined;`)
    .join('\n');

/** Names of styles as short as can be, each once. */
function shortNames() {
  const names = new Map<string, string>();
  return (name: string, file: string) => {
    const whole = `${file} ${name}`;
    names.set(whole, names.get(whole) ?? `_${names.size.toString(36)}`);
    return names.get(whole)!;
  };
}

const instead: Plugin = {
  name: 'instead',
  enforce: 'pre',
  resolveId(id, from) {
    if (id === ENTRY || id === SELECTING) return id;
    if (!from || !id.startsWith('.')) return undefined;
    const other = INSTEAD[relative(root, join(from, '..', id)).replaceAll('\\', '/')];
    return other && join(root, other);
  },
  load(id) {
    if (id === ENTRY) return FIRST;
    if (id === SELECTING) return NOTHING_SELECTED;
    return LEFT_OUT.test(id) ? saysNothing(id) : undefined;
  },
};

/** Between the styles and the code. Neither has it. */
const BETWEEN = '\0';

/**
 * Unpacks the page's styles and code, and runs it. Each is named in the page's policy by what is in it: whatever has been
 * changed does not run, and the page says so itself.
 */
const LOADER = `${noEvalScript}(async()=>{
const packed=Uint8Array.from(atob(document.getElementById('code').textContent),(c)=>c.charCodeAt(0));
const text=await new Response(new Blob([packed]).stream().pipeThrough(new DecompressionStream('deflate-raw'))).text();
const [css,code]=text.split('\\0');
const style=document.createElement('style');
style.textContent=css;
document.querySelector('style').replaceWith(style);
const script=document.createElement('script');
script.textContent=code;
document.body.append(script);
})();`;

/** How the page looks before it is unpacked, or where it can't be. */
const PLAIN_STYLE =
  ':root{color-scheme:light dark;font:1rem/1.5 system-ui,sans-serif}body{margin:1rem}pre{white-space:pre-wrap}';

/** The page of one dive, with empty places for the dive: all it needs is in it, and it may ask for nothing. */
export async function divePage(): Promise<string> {
  const built = await build({
    configFile: false,
    root,
    publicDir: false,
    logLevel: 'error',
    define: { 'process.env.NODE_ENV': '"production"' },
    resolve: { alias: { '@': root } },
    plugins: [instead],
    css: { modules: { generateScopedName: shortNames() } },
    build: {
      write: false,
      target: 'es2022',
      cssCodeSplit: false,
      modulePreload: false,
      rollupOptions: {
        input: ENTRY,
        output: { format: 'iife', codeSplitting: false },
        // Nothing is imported from d3 for what it does on being imported.
        treeshake: { moduleSideEffects: (id) => !/node_modules[\\/]d3-/.test(id) },
      },
    },
  });
  const [code, css] = partsOf(built as Rollup.RollupOutput | Rollup.RollupOutput[]);
  return pageOf(code, css);
}

function partsOf(built: Rollup.RollupOutput | Rollup.RollupOutput[]): [code: string, css: string] {
  const { output } = Array.isArray(built) ? built[0]! : built;
  const code = output.flatMap((part) => (part.type === 'chunk' ? [part.code] : []));
  const css = output.flatMap((part) => (part.type === 'asset' && part.fileName.endsWith('.css') ? [part.source] : []));
  if (code.length !== 1 || css.length !== 1)
    throw new Error(
      `The page of a dive is made of one script and one sheet of styles, not of ${code.length} and ${css.length}.`,
    );
  return [code[0]!.trim(), String(css[0]).trim()];
}

function pageOf(code: string, css: string): string {
  if (css.includes(BETWEEN) || code.includes(BETWEEN))
    throw new Error('The page of a dive can’t be told from its styles.');
  const policy = [
    "default-src 'none'",
    `script-src ${named(LOADER)} ${named(code)}`,
    `style-src ${named(PLAIN_STYLE)} ${named(css)}`,
    'img-src data:',
    "base-uri 'none'",
    "form-action 'none'",
  ].join('; ');
  const packed = deflateRawSync(`${css}${BETWEEN}${code}`, { level: 9 }).toString('base64');
  return `<!doctype html>
<html lang="en-GB" data-theme="${defaultTheme}">
<head>
<meta charset="utf-8"><meta http-equiv="Content-Security-Policy" content="${policy}">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>A dive · Halftime</title>
<style>${PLAIN_STYLE}</style>
</head>
<body>
<div id="dive">
<p data-part="caution">${cautions.general}</p>
<main>
<p>This page is being opened. If this line stays, this browser runs no scripts here, or the file is not as it was saved: ask for it again, or save it anew. This is what is in it, to be read:</p>
<pre data-place="script"></pre>
<p>${cautions.unknown}</p>
</main>
</div>
<script type="text/plain" id="${DIVE_PLACE}"></script>
<script type="text/plain" id="code">${packed}</script>
<script>${LOADER}</script>
</body>
</html>
`;
}

/** A script or sheet of styles by what is in it, as a policy names it. */
function named(text: string): string {
  return `'sha256-${createHash('sha256').update(text).digest('base64')}'`;
}
