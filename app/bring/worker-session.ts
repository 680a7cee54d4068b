import { proxy, wrap, type Remote } from 'comlink';
import type { BringSession } from './bring-session';
import type { Session } from './brought';

/** A session in a thread of its own, begun when it is first needed, so that a long file never stops the page. */
export function workerSession(): Session {
  let begun: Remote<BringSession> | undefined;
  const far = () =>
    (begun ??= wrap<BringSession>(new Worker(new URL('./bring.worker.ts', import.meta.url), { type: 'module' })));
  return {
    look: (file) => far().look(file),
    preview: (mapping) => far().preview(mapping),
    read: (mapping, onProgress) => far().read(mapping, proxy(onProgress)),
    make: (decisions) => far().make(decisions),
    explain: (doubt, onProgress) => far().explain(doubt, proxy(onProgress)),
    write: (kind) => far().write(kind),
    cancel: async () => begun?.cancel(),
  };
}
