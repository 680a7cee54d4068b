import { describe, expect, it } from 'vitest';
import { fillHtml, slotToken, valueHtml, withoutTokens } from '@/app/lessons/fillable';
import { renderLine, renderProse } from '@/app/lessons/prose';

const paths = (number: number) => (number === 3 ? '/lessons/03-x/' : undefined);
const set = (text: string) => renderProse(text, paths);

describe('the text of a lesson', () => {
  it('is set with its links to terms, lessons and screens', () => {
    expect(set('See the [ceiling](term:ceiling), [lesson 3](lesson:3) and [the desk](page:desk).')).toBe(
      '<p>See the <a href="/lessons/glossary/#ceiling">ceiling</a>, <a href="/lessons/03-x/">lesson 3</a> and <a href="/desk/">the desk</a>.</p>\n',
    );
  });

  it('sets formulas as MathML, and shows the source of one that cannot be set', () => {
    expect(set('$M = a + p/b$')).toContain('<math');
    expect(set('$\\frac{a$')).toContain('<code>\\frac{a</code>');
  });

  it('puts its headings under that of the step', () => {
    expect(set('# One\n\n## Two')).toBe('<h3>One</h3>\n<h4>Two</h4>\n');
  });

  it.each([
    ['<script>alert(1)</script>', '<script'],
    ['<img src=x onerror=alert(1)>', '<img'],
    ['text <b onclick="alert(1)">bold</b>', '<b '],
    ['<div>\n\ntext\n\n</div>', '<div>'],
    ['[press](javascript:alert(1))', 'javascript:'],
    ['[press](JaVaScRiPt:alert(1))', '<a'],
    ['[press](data:text/html,x)', '<a'],
    ['[press](https://example.org)', '<a'],
    ['[press](term:"onmouseover="alert(1))', '<a'],
    ['[press](page:__proto__)', '<a'],
    ['![x](https://example.org/x.png)', '<img'],
    ['<https://example.org>', '<a'],
    ['https://example.org', '<a'],
    ['[x]: javascript:alert(1)\n\n[x]', '<a'],
    ['```html\n<script>alert(1)</script>\n```', '<script'],
    ['`<script>`', '<script'],
    ['$\\href{javascript:alert(1)}{x}$', '<a'],
    ['$\\class{x}{y}$', 'class="x"'],
    ['$\\text{<img src=x onerror=alert(1)>}$', '<img'],
    ['&lt;script&gt;', '<script'],
  ])('lets nothing of a stranger’s into the page: %s', (text, forbidden) => {
    expect(set(text)).not.toContain(forbidden);
    expect(renderLine(text, paths)).not.toContain(forbidden);
  });

  it('takes values as text, whatever they hold', () => {
    expect(fillHtml({ html: `<p>${slotToken(0)}</p>` }, [{ metric: '<b>3 m</b>', imperial: '<b>3 m</b>' }])).toBe(
      '<p><span class="amount">&lt;b&gt;3\u00a0m&lt;/b&gt;</span></p>',
    );
    expect(withoutTokens(`a${slotToken(0)}b`)).toBe('a0b');
  });

  it('shows a value in both systems of units, once where they read alike', () => {
    expect(valueHtml({ metric: '30 m', imperial: '98 ft' })).toBe(
      '<span class="amount" data-in="metric">30\u00a0m</span><span class="amount" data-in="imperial">98\u00a0ft</span>',
    );
    expect(valueHtml({ metric: '12 min', imperial: '12 min' })).toBe('<span class="amount">12\u00a0min</span>');
  });
});
