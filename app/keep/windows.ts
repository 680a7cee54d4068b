/** What windows of one machine tell one another: who wrote the desk, and that the saved dives are other than they were. */
export type Word = { readonly about: 'desk'; readonly visit: string } | { readonly about: 'dives' };

export interface OtherWindows {
  tell: (word: Word) => void;
  close: () => void;
}

/** Listens to other windows; where the browser has no such means, nothing is heard and nothing told. */
export function otherWindows(onWord: (word: Word) => void): OtherWindows {
  if (typeof BroadcastChannel === 'undefined') return { tell: () => undefined, close: () => undefined };
  const channel = new BroadcastChannel('halftime.desk');
  channel.onmessage = ({ data }: MessageEvent<Word>) => onWord(data);
  return { tell: (word) => channel.postMessage(word), close: () => channel.close() };
}
