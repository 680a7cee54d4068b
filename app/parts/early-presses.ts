/** What a person did before the page was live: where, what kind of event, and what was written or chosen. */
interface EarlyPress {
  readonly kind: 'click' | 'input' | 'change' | 'space';
  readonly target: Element;
  readonly value?: string;
}

type Windowed = { earlyPresses?: EarlyPress[] };

/**
 * Runs before anything is drawn: remembers what is pressed, chosen and typed until the page answers (`data-ready`). A
 * page that is drawn at build time can be pressed before its scripts are there.
 */
export const earlyPressScript = `(function(){var d=document.documentElement,q=window.earlyPresses=[];
function hear(e){if(d.dataset.ready!==undefined)return;var t=e.target;if(!t||!t.closest)return;
if(e.type==='keydown'){if(e.key!==' '||t.closest('input,textarea,select,button,a,summary'))return;e.preventDefault();q.push({kind:'space',target:document.body});return}
if(e.type==='click'){t=t.closest('button,input[type=radio],input[type=checkbox]');if(t)q.push({kind:'click',target:t});return}
if(e.type==='change'&&t.tagName!=='SELECT')return;
if(e.type==='input'&&(t.tagName==='SELECT'||/^(radio|checkbox)$/.test(t.type)))return;
if(e.type==='input')q=window.earlyPresses=q.filter(function(p){return p.kind!=='input'||p.target!==t});
q.push({kind:e.type,target:t,value:t.value})}
['click','input','change','keydown'].forEach(function(k){addEventListener(k,hear,true)})})()`;

/** How long a press waits for its part of the page to be live, ms, and how often it is looked at. */
const WAITS_MS = 5000;
const LOOKS_MS = 50;

/** Does now what was done before the page was live; once. Parts that are fetched later get theirs when they answer. */
export function replayEarlyPresses(): void {
  let waiting = (window as Windowed).earlyPresses?.splice(0) ?? [];
  const untilMs = performance.now() + WAITS_MS;
  const look = () => {
    const late = performance.now() > untilMs;
    const ready = waiting.filter(({ target }) => late || isLive(target));
    waiting = waiting.filter((press) => !ready.includes(press));
    for (const press of ready) if (press.target.isConnected) replay(press);
    if (waiting.some(({ target }) => target.isConnected)) setTimeout(look, LOOKS_MS);
  };
  look();
}

/** React marks what it has taken over. */
const isLive = (target: Element) =>
  target === document.body || Object.keys(target).some((name) => name.startsWith('__reactProps'));

function replay({ kind, target, value = '' }: EarlyPress): void {
  if (kind === 'space')
    target.dispatchEvent(new KeyboardEvent('keydown', { key: ' ', bubbles: true, cancelable: true }));
  else if (kind === 'click') {
    // A box that is ticked already would be the other way round after another press.
    if (target instanceof HTMLInputElement) target.checked = !target.checked;
    if (target instanceof HTMLElement) target.click();
  } else if (target instanceof HTMLSelectElement) {
    target.value = value;
    target.dispatchEvent(new Event('change', { bubbles: true }));
  } else if (target instanceof HTMLTextAreaElement || target instanceof HTMLInputElement) {
    const { set } = Object.getOwnPropertyDescriptor(Object.getPrototypeOf(target) as object, 'value')!;
    // React takes what it knows of already for no change: first it is told of what stood there, then the box is filled behind it.
    target.value = target.defaultValue;
    set!.call(target, value);
    target.dispatchEvent(new Event('input', { bubbles: true }));
  }
}
