/*
 * HTML that was set elsewhere and comes from who knows whom: what a lesson's text can hold is made anew from it, and
 * nothing else is. Formulas are MathML Core (W3C), as the setter of formulas writes it.
 */

const HTML = 'p,em,strong,del,code,pre,blockquote,br,hr,ul,ol,li,h3,h4,h5,h6,table,thead,tbody,tr,th,td,div,span,a';
const MATHML =
  'math,semantics,mrow,mi,mn,mo,mtext,mspace,ms,mfrac,msqrt,mroot,mstyle,mpadded,merror,mphantom,msub,msup,msubsup,munder,mover,munderover,mtable,mtr,mtd,menclose';
const ELEMENTS = new Set(`${HTML},${MATHML}`.split(','));

/** Attributes that are kept, with what they may say. */
const ATTRIBUTES: Record<string, RegExp> = {
  class: /^(scroll|formula|tml-[a-z-]+)$/,
  tabindex: /^0$/,
  role: /^group$/,
  'aria-label': /^(Table|Formula)$/,
  align: /^(left|center|right)$/,
  start: /^\d{1,4}$/,
  display: /^block$/,
  mathvariant: /^normal$/,
  form: /^(prefix|postfix)$/,
};
for (const name of ['fence', 'separator', 'stretchy', 'accent']) ATTRIBUTES[name] = /^(true|false)$/;
for (const name of ['lspace', 'rspace', 'width', 'linethickness']) ATTRIBUTES[name] = /^-?[\d.]+(em|px)?$/;

/** Where a text may lead: to another page of the site. */
const INSIDE = /^\/[a-z0-9/-]*(#[a-z0-9-]*)?$/;

/**
 * The same HTML with nothing in it but words, their emphasis, lists, tables and formulas. Links lead to `site` in a window
 * of their own, or are left as their words where it isn't known.
 */
export function setHtml(html: string, site: string | undefined): string {
  const made = document.createElement('div');
  take(new DOMParser().parseFromString(html, 'text/html').body, made, site);
  return made.innerHTML;
}

function take(from: Node, into: Element, site: string | undefined): void {
  for (const node of from.childNodes) {
    if (node.nodeType === Node.TEXT_NODE) into.append(node.nodeValue ?? '');
    else if (node instanceof Element) takeElement(node, into, site);
  }
}

function takeElement(element: Element, into: Element, site: string | undefined): void {
  const name = element.localName;
  const href = element.getAttribute('href') ?? '';
  if (!ELEMENTS.has(name) || (name === 'a' && (site === undefined || !INSIDE.test(href)))) {
    // The words of a link stay; what is no text of a lesson goes with all that is in it.
    if (name === 'a') take(element, into, site);
    return;
  }
  const copy = document.createElementNS(element.namespaceURI, name);
  for (const { name: attribute, value } of element.attributes)
    if (Object.hasOwn(ATTRIBUTES, attribute) && ATTRIBUTES[attribute]!.test(value)) copy.setAttribute(attribute, value);
  if (name === 'a') {
    copy.setAttribute('href', `${site}${href}`);
    copy.setAttribute('target', '_blank');
    copy.setAttribute('rel', 'noreferrer');
  }
  take(element, copy, site);
  into.append(copy);
}
