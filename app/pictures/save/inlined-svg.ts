/** What of a drawing's look comes from style sheets: the rest is in its attributes. */
const LOOKS = [
  'fill',
  'fill-opacity',
  'fill-rule',
  'stroke',
  'stroke-width',
  'stroke-opacity',
  'stroke-dasharray',
  'stroke-linecap',
  'stroke-linejoin',
  'opacity',
  'paint-order',
  'display',
  'visibility',
  'stop-color',
  'stop-opacity',
  'font-family',
  'font-size',
  'font-weight',
  'font-style',
  'font-variant-numeric',
  'letter-spacing',
  'text-anchor',
  'dominant-baseline',
  'vector-effect',
  'mix-blend-mode',
] as const;

/** What only a hand on the screen needs. */
const ONLY_ON_SCREEN = ['class', 'role', 'tabindex', 'style'];

/**
 * A drawing on the page as one that can stand alone: every look that a style sheet gave it is written on it, colours as
 * they are in the theme now. Parts that are not drawn are left out.
 */
export function inlinedSvg(drawing: SVGSVGElement): SVGSVGElement {
  const copy = drawing.cloneNode(true) as SVGSVGElement;
  writeLooks(drawing, copy, undefined);
  return copy;
}

function writeLooks(from: Element, to: Element, parent: CSSStyleDeclaration | undefined): void {
  const looks = getComputedStyle(from);
  for (const name of LOOKS) {
    const value = looks.getPropertyValue(name);
    // What is inherited need not be said again at every mark.
    if (value === '' || (INHERITED.has(name) && parent?.getPropertyValue(name) === value)) continue;
    if (!INHERITED.has(name) && value === PLAIN[name]) {
      to.removeAttribute(name);
      continue;
    }
    to.setAttribute(name, plainColour(value));
  }
  for (const name of [
    ...ONLY_ON_SCREEN,
    ...to.getAttributeNames().filter((one) => one.startsWith('aria-') || one.startsWith('data-')),
  ]) {
    to.removeAttribute(name);
  }
  const pairs = Array.from(from.children, (child, index) => [child, to.children[index]!] as const);
  for (const [child, twin] of pairs) {
    const { display, fill, stroke } = getComputedStyle(child);
    const unseen =
      display === 'none' ||
      // A point to be taken hold of.
      child.getAttribute('role') === 'slider' ||
      (child.children.length === 0 &&
        isClear(fill) &&
        isClear(stroke) &&
        child.tagName !== 'stop' &&
        child.tagName !== 'title');
    if (unseen && !child.closest('defs')) twin.remove();
    else writeLooks(child, twin, looks);
  }
}

/** Looks that a part takes over from the one around it. */
const INHERITED: ReadonlySet<string> = new Set<string>(
  LOOKS.filter(
    (name) =>
      ![
        'opacity',
        'display',
        'stop-color',
        'stop-opacity',
        'dominant-baseline',
        'vector-effect',
        'mix-blend-mode',
      ].includes(name),
  ),
);

/** Looks that are not taken over, where they are nothing out of the ordinary. */
const PLAIN: Readonly<Record<string, string>> = {
  opacity: '1',
  display: 'inline',
  'stop-color': 'rgb(0, 0, 0)',
  'stop-opacity': '1',
  'dominant-baseline': 'auto',
  'vector-effect': 'none',
  'mix-blend-mode': 'normal',
};

function isClear(colour: string): boolean {
  return colour === 'none' || colour === 'transparent' || colour === 'rgba(0, 0, 0, 0)';
}

let mixer: CanvasRenderingContext2D | null | undefined;

/** Colours in notations that drawing programs don't know yet, as the pixels they come to. */
function plainColour(value: string): string {
  if (!/^(color|oklch|oklab|lab|lch|color-mix|light-dark)\(/.test(value)) return value;
  mixer ??= document.createElement('canvas').getContext('2d', { willReadFrequently: true });
  if (!mixer) return value;
  mixer.clearRect(0, 0, 1, 1);
  mixer.fillStyle = value;
  mixer.fillRect(0, 0, 1, 1);
  const [red, green, blue, alpha] = mixer.getImageData(0, 0, 1, 1).data;
  return `rgba(${red}, ${green}, ${blue}, ${((alpha ?? 255) / 255).toFixed(3)})`;
}
