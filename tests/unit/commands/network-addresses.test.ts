import type { NetworkInterfaceInfo } from 'node:os';
import { describe, expect, it } from 'vitest';
import { addressesInNetwork } from '@/app/commands/serve/network-addresses';

const at = (address: string, internal = false, family: 'IPv4' | 'IPv6' = 'IPv4') =>
  ({ address, internal, family }) as NetworkInterfaceInfo;

describe('addresses for a class', () => {
  it('are none where the server listens to this machine alone', () => {
    for (const host of ['127.0.0.1', 'localhost', '::1'])
      expect(addressesInNetwork(host, 3000, { eth0: [at('192.168.1.5')] })).toEqual([]);
  });

  it('are those of every interface but this machine’s own, a shop’s network first', () => {
    const interfaces = {
      lo: [at('127.0.0.1', true)],
      docker0: [at('172.17.0.1')],
      wan: [at('203.0.113.7')],
      wlan0: [at('192.168.1.5'), at('fe80::1', false, 'IPv6')],
    };
    expect(addressesInNetwork('0.0.0.0', 3000, interfaces)).toEqual([
      'http://192.168.1.5:3000',
      'http://203.0.113.7:3000',
      'http://172.17.0.1:3000',
    ]);
  });

  it('are the one it was told to listen on', () => {
    expect(addressesInNetwork('192.168.1.20', 80, {})).toEqual(['http://192.168.1.20:80']);
    expect(addressesInNetwork('fd00::2', 80, {})).toEqual(['http://[fd00::2]:80']);
  });
});
