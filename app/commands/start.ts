import { cautions } from '../../content/cautions';
import { buildSite, isSiteStale, siteFolder } from './build-site';
import { serveSite } from './serve-site';

const port = Number(process.env['PORT'] ?? 3000);

/** Builds when needed, serves, and returns an exit code only if that could not be done. */
async function start(): Promise<number | undefined> {
  if (!Number.isInteger(port) || port < 0 || port > 65535) {
    console.error(
      `PORT is "${process.env['PORT']}"; give it a whole number from 0 to 65535, such as PORT=3001 npm start.`,
    );
    return 1;
  }
  if (isSiteStale()) {
    console.log('Building the site (about half a minute; only after a change).');
    const code = await buildSite();
    if (code !== 0) return code;
  }
  try {
    const { address } = await serveSite(siteFolder, port);
    console.log(`\nHalftime is open at ${address}\n${cautions.general}\n\nStop it with Ctrl+C.`);
    return undefined;
  } catch (error) {
    const taken = (error as NodeJS.ErrnoException).code === 'EADDRINUSE';
    console.error(
      taken
        ? `Port ${port} is already in use; stop what uses it, or pick another: PORT=${port + 1} npm start`
        : `Halftime could not open port ${port}: ${(error as Error).message}`,
    );
    return 1;
  }
}

const code = await start();
if (code !== undefined) process.exitCode = code;
