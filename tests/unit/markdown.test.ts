import { describe, expect, it } from 'vitest';
import { renderMarkdown } from '@/app/parts/markdown';

describe('markdown', () => {
  it('sets a formula inside a line as MathML', () => {
    const { html } = renderMarkdown('Pressure is $p = p_0 + \\rho g d$ there.');
    expect(html).toContain('<math');
    expect(html).toContain('ρ');
    expect(html).not.toContain('$');
    // A line may be broken anywhere by whoever lays the text out.
    expect(renderMarkdown('From there to $gf =\nhigh$ at the surface.').html).not.toContain('$');
  });

  it('sets a formula of its own as a block that scrolls inside itself', () => {
    const { html } = renderMarkdown('Before.\n\n$$\nP = a + \\frac{p}{b}\n$$\n\nAfter.');
    expect(html).toMatch(/<div class="formula"[^>]*><math[^>]*display="block"/);
    expect(html).toContain('<mfrac>');
    expect(html).toContain('<p>After.</p>');
  });

  it('sets a formula with a paragraph to itself the same way, but not one that only begins a paragraph', () => {
    const { html } = renderMarkdown('So:\n\n$P = a$\n\n$RQ$ is the respiratory quotient.\n');
    expect(html).toMatch(/<div class="formula"[^>]*><math[^>]*display="block"/);
    expect(html.match(/class="formula"/g)).toHaveLength(1);
    expect(html).toMatch(/<p><math.* is the respiratory quotient\.<\/p>/s);
  });

  it('leaves sums of money and code alone', () => {
    expect(renderMarkdown('It cost $5 and then $6.').html).toContain('It cost $5 and then $6.');
    expect(renderMarkdown('Write `$x$` for a formula.').html).toContain('<code>$x$</code>');
  });

  it('refuses a formula with a mistake, so the build stops', () => {
    expect(() => renderMarkdown('$\\frac{1$')).toThrow();
  });

  it('gives headings anchors, and two of one name different ones', () => {
    const { html, headings } = renderMarkdown('# The model\n\n## What it *can’t* know\n\n## Sources\n\n## Sources');
    expect(headings).toEqual([
      { id: 'the-model', text: 'The model', depth: 1 },
      { id: 'what-it-can-t-know', text: 'What it can’t know', depth: 2 },
      { id: 'sources', text: 'Sources', depth: 2 },
      { id: 'sources-2', text: 'Sources', depth: 2 },
    ]);
    expect(html).toContain('<h2 id="what-it-can-t-know">What it <em>can’t</em> know</h2>');
  });

  it('lets a wide table scroll inside itself', () => {
    expect(renderMarkdown('| a | b |\n|---|---|\n| 1 | 2 |').html).toMatch(
      /<div class="scroll"[^>]*><table>[\s\S]*<\/table><\/div>/,
    );
  });
});
