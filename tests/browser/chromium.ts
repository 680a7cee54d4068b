import { existsSync, mkdirSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { delimiter, join } from 'node:path';
import { chromium, type Browser } from 'playwright-core';
import { repositoryRoot } from '../../app/commands/site/build-site';

interface Executable {
  path: string;
  env: Record<string, string>;
}

const systemNames = ['chromium', 'chromium-browser', 'google-chrome', 'google-chrome-stable', 'chrome'];

const flags = [
  '--no-sandbox',
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
];

/** Opens a browser: the one in `CHROMIUM_PATH`, else one on this machine, else the packaged one. `CHROMIUM=npm` insists on the last. */
export async function launchChromium(): Promise<Browser> {
  const { path, env } = await findChromium();
  return chromium.launch({
    executablePath: path,
    headless: true,
    args: flags,
    env: { ...definedEntries(process.env), ...env },
  });
}

async function findChromium(): Promise<Executable> {
  if (process.env['CHROMIUM'] === 'npm') return packagedChromium();
  const named = process.env['CHROMIUM_PATH'];
  if (named !== undefined && named !== '') {
    if (!existsSync(named)) throw new Error(`CHROMIUM_PATH names "${named}", which is not there.`);
    return { path: named, env: {} };
  }
  const system = systemChromium();
  return system === undefined ? packagedChromium() : { path: system, env: {} };
}

function systemChromium(): string | undefined {
  const macChrome = '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome';
  const folders = (process.env['PATH'] ?? '').split(delimiter).filter((folder) => folder !== '');
  return [...folders.flatMap((folder) => systemNames.map((name) => join(folder, name))), macChrome].find(existsSync);
}

/**
 * The Chromium inside `@sparticuz/chromium`, unpacked once per version under node_modules.
 * Unpacked beside its final place and then renamed, so that a run stopped half-way leaves nothing that looks whole.
 */
async function packagedChromium(): Promise<Executable> {
  const cache = join(repositoryRoot, 'node_modules/.cache/halftime');
  const folder = join(cache, `chromium-${packagedVersion()}`);
  if (!existsSync(folder)) {
    const unpacking = join(cache, `unpacking-${process.pid}`);
    mkdirSync(unpacking, { recursive: true });
    await unpackInto(unpacking);
    try {
      renameSync(unpacking, folder);
    } catch (error) {
      rmSync(unpacking, { recursive: true, force: true });
      if (!existsSync(folder)) throw error;
    }
  }
  return {
    path: join(folder, 'chromium'),
    env: {
      LD_LIBRARY_PATH: [join(folder, 'al2023/lib'), process.env['LD_LIBRARY_PATH']].filter(Boolean).join(delimiter),
      FONTCONFIG_FILE: writeFontsConf(folder),
    },
  };
}

function packagedVersion(): string {
  const manifest = readFileSync(join(repositoryRoot, 'node_modules/@sparticuz/chromium/package.json'), 'utf8');
  return (JSON.parse(manifest) as { version: string }).version;
}

/**
 * The package unpacks into the system's temporary folder, and only brings its shared libraries
 * when it believes it runs on a hosted runtime; both are said to it through the environment.
 */
async function unpackInto(folder: string): Promise<void> {
  const before = { ...process.env };
  process.env['TMPDIR'] = folder;
  process.env['AWS_EXECUTION_ENV'] = 'AWS_Lambda_nodejs20.x';
  try {
    const { default: packaged } = await import('@sparticuz/chromium');
    await packaged.executablePath();
  } finally {
    for (const name of ['TMPDIR', 'AWS_EXECUTION_ENV', 'LD_LIBRARY_PATH', 'FONTCONFIG_PATH', 'HOME']) {
      const value = before[name];
      if (value === undefined) delete process.env[name];
      else process.env[name] = value;
    }
  }
}

/** The package's own font settings name a folder that isn't there, and then every letter has zero width. */
function writeFontsConf(folder: string): string {
  const file = join(folder, 'fonts.conf');
  writeFileSync(
    file,
    `<?xml version="1.0"?>
<!DOCTYPE fontconfig SYSTEM "fonts.dtd">
<fontconfig>
  <dir>${join(folder, 'fonts')}</dir>
  <dir>/usr/share/fonts</dir>
  <cachedir>${join(folder, 'fontconfig-cache')}</cachedir>
</fontconfig>
`,
  );
  return file;
}

function definedEntries(env: NodeJS.ProcessEnv): Record<string, string> {
  return Object.fromEntries(Object.entries(env).filter((entry): entry is [string, string] => entry[1] !== undefined));
}
