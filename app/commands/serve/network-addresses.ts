import type { IncomingMessage } from 'node:http';
import { networkInterfaces, type NetworkInterfaceInfo } from 'node:os';

/** Names that reach this machine and no other. */
const LOOPBACK = /^(localhost|127(\.\d{1,3}){3}|::1)$/;
const EVERY_INTERFACE = ['0.0.0.0', '::'];
/** Networks within this machine, such as those between it and its containers: no phone is in them. */
const WITHIN_MACHINE = /^(docker|br-|veth|virbr|vmnet|vboxnet|utun|tun|tap|zt)/i;
/** Addresses for a network of one's own (RFC 1918); a shop's is one of them. */
const PRIVATE = /^(192\.168\.|10\.|172\.(1[6-9]|2\d|3[01])\.)/;

export type Interfaces = Readonly<Record<string, readonly NetworkInterfaceInfo[] | undefined>>;

export function isLoopback(host: string): boolean {
  return LOOPBACK.test(host);
}

/** Where a request comes from, as an address without what marks one of version 4 in one of version 6. */
export function cameFrom({ socket }: Pick<IncomingMessage, 'socket'>): string {
  return (socket.remoteAddress ?? '').replace(/^::ffff:/, '');
}

/**
 * Addresses at which others in the network reach a server that listens at `host`, likeliest first; none where it
 * listens to this machine alone.
 */
export function addressesInNetwork(host: string, port: number, interfaces: Interfaces = networkInterfaces()): string[] {
  if (isLoopback(host)) return [];
  const at = (name: string) => `http://${name}:${port}`;
  if (!EVERY_INTERFACE.includes(host)) return [at(host.includes(':') ? `[${host}]` : host)];
  const found = Object.entries(interfaces).flatMap(([name, infos = []]) =>
    infos.filter(({ family, internal }) => family === 'IPv4' && !internal).map(({ address }) => ({ name, address })),
  );
  const doubt = ({ name, address }: (typeof found)[number]) =>
    (WITHIN_MACHINE.test(name) ? 2 : 0) + (PRIVATE.test(address) ? 0 : 1);
  return found.sort((one, other) => doubt(one) - doubt(other)).map(({ address }) => at(address));
}
