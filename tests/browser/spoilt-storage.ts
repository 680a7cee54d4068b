import type { BrowserContext, Page } from 'playwright-core';

/* What a browser, a disk or a clock can do to what is kept. */

/** Storage of every kind that may not be used. */
export async function blockStorage(context: BrowserContext): Promise<void> {
  await context.addInitScript(() => {
    const blocked = () => {
      throw new DOMException('The operation is insecure.', 'SecurityError');
    };
    for (const name of ['localStorage', 'sessionStorage', 'indexedDB'] as const)
      Object.defineProperty(window, name, { get: blocked });
  });
}

/** Storage that is full while `window.full` is so. */
export async function fillStorage(page: Page): Promise<void> {
  await page.addInitScript(() => {
    const full = () => (window as { full?: boolean }).full;
    const { setItem } = Storage.prototype;
    Storage.prototype.setItem = function (name, value) {
      // Storage that has no room for a record has some for a letter.
      if (full() && value.length > 10) throw new DOMException('no room', 'QuotaExceededError');
      setItem.call(this, name, value);
    };
    const { put } = IDBObjectStore.prototype;
    IDBObjectStore.prototype.put = function (...given: Parameters<typeof put>) {
      if (full()) throw new DOMException('no room', 'QuotaExceededError');
      return put.apply(this, given);
    };
  });
}
export const setFull = (page: Page, full: boolean) =>
  page.evaluate((now) => void ((window as { full?: boolean }).full = now), full);

export const withoutDatabase = (page: Page) =>
  page.addInitScript(() => Object.defineProperty(window, 'indexedDB', { value: undefined }));

/** The computer's clock, as far as the page can tell, moved by so many milliseconds from now on. */
export async function movableClock(page: Page): Promise<(byMs: number) => Promise<void>> {
  await page.addInitScript(() => {
    const { now } = Date;
    const moved = () => now() + Number(sessionStorage.getItem('moved') ?? 0);
    Date.now = moved;
    window.Date = new Proxy(Date, {
      construct: (Own, given: unknown[]) =>
        given.length === 0 ? new Own(moved()) : (Reflect.construct(Own, given) as Date),
    });
  });
  return (byMs) =>
    page.evaluate(
      (ms) => sessionStorage.setItem('moved', String(Number(sessionStorage.getItem('moved') ?? 0) + ms)),
      byMs,
    );
}

/** Puts records on the desk's shelf. */
export async function putRecords(page: Page, records: Readonly<Record<string, unknown>>): Promise<void> {
  await page.evaluate(
    (all) =>
      new Promise<void>((resolve) => {
        const opening = indexedDB.open('halftime.desk');
        opening.onsuccess = () => {
          const transaction = opening.result.transaction('records', 'readwrite');
          for (const [name, record] of Object.entries(all)) transaction.objectStore('records').put(record, name);
          transaction.oncomplete = () => {
            opening.result.close();
            resolve();
          };
        };
      }),
    records,
  );
}
