import { describe, expect, it } from 'vitest';
import { parseScript } from '@/lib/dive/script';
import { scriptReference } from '@/lib/dive/script-reference';

const settings = scriptReference.filter(({ kind }) => kind === 'setting');
const steps = scriptReference.filter(({ kind }) => kind === 'step');

/** A dive in which a step makes sense. */
function around(name: string, line: string): string {
  if (name === 'interval') return line;
  if (name === 'descend') return `${line}\nascend to surface at 9 m/min`;
  return `descend to 40 m at 18 m/min\n${line}\n${line.includes('surface') ? '' : 'ascend to surface at 9 m/min'}`;
}

function stepsOf(text: string) {
  const parsed = parseScript(text);
  return parsed.ok ? parsed.dive.steps : parsed.errors;
}

describe('the reference of the script language', () => {
  it.each(settings.flatMap(({ examples }) => examples))('shows a setting that reads: %s', (example) => {
    expect(parseScript(example)).toMatchObject({ ok: true });
  });

  it.each(steps.flatMap(({ name, examples }) => examples.map((example) => [name, example] as const)))(
    'shows a step that reads: %s, as in %s',
    (name, example) => {
      expect(parseScript(around(name, example))).toMatchObject({ ok: true });
    },
  );

  it.each(settings.flatMap(({ name, choices = [] }) => choices.map((choice) => `${name}: ${choice}`)))(
    'offers a choice that reads: %s',
    (line) => {
      expect(parseScript(line)).toMatchObject({ ok: true });
    },
  );

  it.each(settings.flatMap(({ name, also, examples }) => also.map((other) => [name, other, examples[0]!] as const)))(
    'means the same by %s and %s',
    (name, other, example) => {
      const [one, same] = [example, example.replace(name, other)].map(parseScript);
      expect(one).toMatchObject({ ok: true });
      expect(same!.ok && same!.dive.settings).toEqual(one!.ok && one!.dive.settings);
    },
  );

  // `surface` takes no depth, so the example of `ascend` does not fit it; it has one of its own.
  const synonyms = steps.flatMap(({ name, also, examples }) =>
    also.filter((other) => other !== 'surface').map((other) => [name, other, examples[0]!] as const),
  );
  it.each(synonyms)('means the same by %s and %s', (name, other, example) => {
    const steps = stepsOf(around(name, example));
    expect(steps[0]).toHaveProperty('kind');
    expect(stepsOf(around(name, example.replace(name, other)))).toEqual(steps);
  });

  it.each(settings.filter(({ unless }) => !unless!.endsWith('.')))(
    'states what $name means when left out',
    ({ name, unless }) => {
      const [with_, without] = [parseScript(`${name}: ${unless}`), parseScript('')];
      expect(with_.ok && without.ok && with_.dive.settings).toEqual(without.ok && without.dive.settings);
    },
  );

  it('has no two entries with the same words', () => {
    const words = scriptReference.flatMap(({ name, also }) => [name, ...also]);
    expect(new Set(words).size).toBe(words.length);
  });
});
