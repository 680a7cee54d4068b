'use client';

import { useEffect, useMemo, useState } from 'react';
import { qrPicture } from '@/lib/files/links/qr';
import { Choice } from '../../parts/Choice';
import { Disclosure } from '../../parts/Disclosure';
import { QrFigure } from '../../parts/QrFigure';
import { routes } from '../../parts/routes';
import { reopen, useClass, useTeacher } from './teacher-line';
import styles from './teach.module.css';

/** How phones come in: the code, an address they can reach, and what to look at where they can't. */
export function JoinBoard({ code }: { code: string }) {
  const inNetwork = useTeacher((one) => one.here?.inNetwork) ?? [];
  // The machine may have come into another network since.
  useEffect(() => void reopen(), []);
  const addresses = inNetwork.length > 0 ? inNetwork : isReached(location.hostname) ? [location.origin] : [];
  const [chosen, choose] = useState(addresses[0] ?? '');
  const address = addresses.includes(chosen) ? chosen : (addresses[0] ?? '');
  const link = `${address}${routes.class.path}#${code}`;
  const qr = useMemo(() => qrPicture(link), [link]);
  const { phones, here } = useClass();
  const names = here.map((phone) => phones[phone] ?? '').filter((name) => name !== '');
  return (
    <section aria-labelledby="join" className={styles.join}>
      <div>
        <h2 id="join">Join with your phone</h2>
        {address === '' ? (
          <p role="alert">
            This machine is in no network that phones could be in. Join one, or make one with a phone’s hotspot, then
            reload this page.
          </p>
        ) : (
          <>
            <p>Photograph the square, or open</p>
            <p className={styles.address}>{`${address.replace('http://', '')}${routes.class.path}`}</p>
            <p>
              and type the code <b className={styles.address}>{code}</b>
            </p>
            {addresses.length > 1 && (
              <Choice
                label="Address of this machine"
                value={address}
                options={addresses.map((one) => ({ value: one, label: one }))}
                onChange={choose}
              />
            )}
            <Disclosure summary="If a phone can’t open it">
              <ul>
                <li>Is the phone in the same network as this machine, and not on mobile data?</li>
                <li>Try the next address, if there is more than one.</li>
                <li>
                  Does the network let its guests reach one another? Many guest networks don’t; a phone’s hotspot does.
                </li>
                <li>
                  Does this machine’s firewall let other machines in? It may ask once; say yes to private networks.
                </li>
              </ul>
            </Disclosure>
          </>
        )}
        {names.length > 0 && (
          <Disclosure summary={`Nicknames (${names.length})`}>
            <p>{names.join(', ')}</p>
          </Disclosure>
        )}
      </div>
      {address !== '' && qr.ok && <QrFigure qr={qr.value} />}
    </section>
  );
}

/** Whether others could open a page by this name. */
function isReached(hostname: string): boolean {
  return !/^(localhost|127\.|\[?::1)/.test(hostname);
}
