import { renderUnicodeCompact } from 'uqr';
import { cautions } from '../../content/cautions';
import { buildSite, isSiteStale, siteFolder } from './site/build-site';
import { classHandler } from './class/class-handler';
import { isLoopback } from './serve/network-addresses';
import { serveSite, type RunningSite } from './serve/serve-site';

const USAGE = `npm start              opens Halftime to this machine alone
npm start -- --class   opens it to everyone in the network
PORT and HOST choose the port and the interface: PORT=3001 HOST=192.168.1.20 npm start`;

let ending = false;
const words = process.argv.slice(2);
const forClass = words.includes('--class');
const port = Number(process.env['PORT'] || 3000);
const host = process.env['HOST'] || (forClass ? '0.0.0.0' : '127.0.0.1');

/** Builds when needed, serves, and returns an exit code only if that could not be done. */
async function start(): Promise<number | undefined> {
  const unknown = words.find((word) => word !== '--class');
  if (unknown !== undefined) {
    console.error(`“${unknown}” is not understood.\n${USAGE}`);
    return 2;
  }
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
    const site = await serveSite(siteFolder, port, { host, handlers: [classHandler()], onNetwork: tellTurned });
    console.log(told(site));
    endWhenTold(site);
    return undefined;
  } catch (error) {
    console.error(failure(error as NodeJS.ErrnoException));
    return 1;
  }
}

function told({ address, inNetwork }: RunningSite): string {
  const [first] = inNetwork;
  return [
    '',
    `Halftime is open at ${address}`,
    ...networkLines(inNetwork, first),
    '',
    cautions.general,
    '',
    'Stop it with Ctrl+C.',
  ].join('\n');
}

/** Said when the page has opened the site to the network, or closed it. */
function tellTurned(inNetwork: readonly string[]): void {
  if (ending) return;
  const [first] = inNetwork;
  console.log(
    first === undefined ? '\nIt is open to this machine alone.' : ['', ...networkLines(inNetwork, first)].join('\n'),
  );
}

function networkLines(inNetwork: readonly string[], first: string | undefined): string[] {
  if (first !== undefined)
    return [
      'It is open to everyone in the network. Phones and other screens open:',
      ...inNetwork.map((one) => `  ${one}`),
      '',
      renderUnicodeCompact(first),
    ];
  if (!forClass)
    return [
      'It is open to this machine alone. To open it to a class: npm start -- --class, or a switch on its front page.',
    ];
  return [
    isLoopback(host)
      ? `HOST is "${host}", so it is open to this machine alone. Leave HOST out to open it to the network.`
      : 'This machine is in no network by which others could reach it.',
  ];
}

/** Ends once asked to, by Ctrl+C or by whoever runs it. Asked twice, it does not wait. */
function endWhenTold(site: RunningSite): void {
  for (const signal of ['SIGINT', 'SIGTERM', 'SIGHUP'] as const) {
    process.on(signal, () => {
      if (ending) process.exit(1);
      ending = true;
      console.log('\nHalftime has stopped.');
      void site.close().then(() => process.exit(0));
    });
  }
}

function failure({ code, message }: NodeJS.ErrnoException): string {
  if (code === 'EADDRINUSE')
    return `Port ${port} is already in use; stop what uses it, or pick another: PORT=${port + 1} npm start`;
  if (code === 'EACCES') return `Port ${port} may not be opened by you; pick one above 1023: PORT=3000 npm start`;
  if (code === 'EADDRNOTAVAIL' || code === 'ENOTFOUND' || code === 'EAI_AGAIN')
    return `HOST is "${host}", which is no address of this machine. Leave it out, or give it one that is.`;
  return `Halftime could not open port ${port}: ${message}`;
}

const code = await start();
if (code !== undefined) process.exitCode = code;
