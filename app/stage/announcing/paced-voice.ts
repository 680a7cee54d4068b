/** Two sentences on the dive are at least so far apart, ms: time to hear one out. */
const APART_MS = 3000;
/** What comes within this of the first is said with it, ms. */
const TOGETHER_MS = 150;

export interface PacedVoice<News> {
  /** Says it when there is time, with what else has come until then. */
  add: (news: News) => void;
  /** Forgets what waits and counts what was just said, by whoever said it, as the last. */
  interrupted: () => void;
  end: () => void;
}

/** Gathers news and has them told together, at least three seconds after the last were. */
export function pacedVoice<News>(tell: (news: readonly News[]) => void): PacedVoice<News> {
  let waiting: News[] = [];
  let toldAtMs = -Infinity;
  let timer: ReturnType<typeof setTimeout> | undefined;
  const telling = () => {
    timer = undefined;
    toldAtMs = performance.now();
    const news = waiting;
    waiting = [];
    tell(news);
  };
  return {
    add(news) {
      waiting.push(news);
      timer ??= setTimeout(telling, Math.max(TOGETHER_MS, toldAtMs + APART_MS - performance.now()));
    },
    interrupted() {
      clearTimeout(timer);
      timer = undefined;
      waiting = [];
      toldAtMs = performance.now();
    },
    end: () => clearTimeout(timer),
  };
}
