import { createHash } from 'node:crypto';
import { join, relative } from 'node:path';
import { fileURLToPath } from 'node:url';
import { deflateRawSync } from 'node:zlib';
import { build, type Plugin, type Rollup } from 'vite';
import { cautions } from '../../content/cautions';
import { DIVE_PLACE } from '../../lib/files/links/dive-page';
import { noEvalScript } from '../parts/no-eval';
import { defaultTheme } from '../parts/theme';

const root = fileURLToPath(new URL('../..', import.meta.url));
const alone = join(root, 'app/alone');

/** Parts of the site that a page of its own has another for, by the file they are in. */
const INSTEAD: Readonly<Record<string, string>> = {
  'app/stage/passed-on/SaveDivePage': 'nothing.tsx',
  'app/stage/figures/SavePicture': 'nothing.tsx',
  'app/stage/figures/SaveReadings': 'nothing.tsx',
  'app/stage/units/SetupEditor': 'nothing.tsx',
  'app/stage/why/DeskWorking': 'DeskWorking.tsx',
  'app/parts/safe-storage': 'safe-storage.ts',
};

/** The site's own colours, sizes and letters come before everything. */
const ENTRY = 'virtual:dive-page';
const FIRST = ['app/tokens.css', 'app/globals.css', 'app/alone/entry.tsx'].map(
  (file) => `import ${JSON.stringify(join(root, file))};`,
);

const instead: Plugin = {
  name: 'instead',
  enforce: 'pre',
  resolveId(id, from) {
    if (id === ENTRY) return id;
    if (!from || !id.startsWith('.')) return undefined;
    const other = INSTEAD[relative(root, join(from, '..', id)).replaceAll('\\', '/')];
    return other && join(alone, 'instead', other);
  },
  load: (id) => (id === ENTRY ? FIRST.join('\n') : undefined),
};

/**
 * Unpacks what the page runs and runs it. Both are named in the page's policy by what is in them: whatever has been changed
 * does not run, and the page says so itself.
 */
const LOADER = `${noEvalScript}(async()=>{
const packed=Uint8Array.from(atob(document.getElementById('code').textContent),(c)=>c.charCodeAt(0));
const code=await new Response(new Blob([packed]).stream().pipeThrough(new DecompressionStream('deflate-raw'))).text();
const script=document.createElement('script');
script.textContent=code;
document.body.append(script);
})();`;

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
  const policy = [
    "default-src 'none'",
    `script-src ${named(LOADER)} ${named(code)}`,
    `style-src ${named(css)}`,
    'img-src data:',
    "base-uri 'none'",
    "form-action 'none'",
  ].join('; ');
  const packed = deflateRawSync(code, { level: 9 }).toString('base64');
  return `<!doctype html>
<html lang="en-GB" data-theme="${defaultTheme}">
<head>
<meta charset="utf-8"><meta http-equiv="Content-Security-Policy" content="${policy}">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>A dive · Halftime</title>
<style>${css}</style>
</head>
<body>
<div id="dive">
<p data-part="caution">${cautions.general}</p>
<main>
<p>The dive is being opened. If this line stays, this browser runs no scripts here, or the file is not as it was saved: ask for it again, or save it anew from the desk. This is its script, to be read:</p>
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
