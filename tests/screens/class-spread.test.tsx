import { render, screen, within } from '@testing-library/react';
import { afterEach, describe, expect, it } from 'vitest';
import { DepthLinePicture } from '@/app/class/shown/DepthLinePicture';
import { usePreferences } from '@/app/parts/preferences';
import { SpreadPicture } from '@/app/parts/spread/SpreadPicture';
import { choiceAsk, choiceTruth, numberAsk, numberTruth } from '../unit/class/asks';

afterEach(() => usePreferences.setState({ units: 'metric' }));

it.each([
  ['metric', '29.9 m'],
  ['imperial', '98 ft'],
] as const)('the depth line of a question is told as every depth is, in %s units', (units, depth) => {
  usePreferences.setState({ units });
  const points: [number, number][] = [
    [0, 0],
    [100, 29.87],
    [400, 0],
  ];
  render(<DepthLinePicture points={points} />);
  expect(screen.getByText(`The depth of the dive: to ${depth}, over 6:40.`)).toBeInTheDocument();
});

describe('how the answers of a class lie', () => {
  it('is a bar with a count for each answer, both rounds, and the right one marked once it is told', () => {
    const spreads = [
      { by: 'choice' as const, counts: [4, 1, 0] },
      { by: 'choice' as const, counts: [1, 4, 0] },
    ];
    const { rerender } = render(
      <SpreadPicture ask={choiceAsk} spreads={spreads} truth={undefined} optionsHtml={undefined} />,
    );
    const counts = () => screen.getAllByRole('status').map((one) => parseInt(one.textContent));
    expect(counts()).toEqual([4, 1, 1, 4, 0, 0]);
    expect(screen.queryByText(/that is the answer/)).toBeNull();
    rerender(<SpreadPicture ask={choiceAsk} spreads={spreads} truth={choiceTruth} optionsHtml={undefined} />);
    const right = screen.getByText(/that is the answer/).closest('li')!;
    expect(within(right).getByText(/two/)).toBeInTheDocument();
  });

  it('tells numbers and the model’s in the reader’s units', () => {
    const ask = { ...numberAsk, dimension: 'depth' as const };
    const truth = { ...numberTruth, value: 9, printed: { metric: '9.0 m', imperial: '30 ft' } };
    usePreferences.setState({ units: 'imperial' });
    render(
      <SpreadPicture ask={ask} spreads={[{ by: 'number', values: [3, 6, 9] }]} truth={truth} optionsHtml={undefined} />,
    );
    expect(screen.getByText(/3 answers, from 9.84 to 29.53 ft, the middle one 19.69 ft/)).toBeInTheDocument();
    expect(screen.getByText('30 ft')).toBeInTheDocument();
  });
});

it('numbers without a unit are told without a gap where it would stand', () => {
  const ask = { ...numberAsk, dimension: 'plain' as const };
  render(
    <SpreadPicture
      ask={ask}
      spreads={[{ by: 'number', values: [1, 2, 4] }]}
      truth={undefined}
      optionsHtml={undefined}
    />,
  );
  expect(screen.getByText('3 answers, from 1 to 4, the middle one 2')).toBeInTheDocument();
});

describe('one wild number', () => {
  const dots = (values: number[]) => {
    const { container } = render(
      <SpreadPicture ask={numberAsk} spreads={[{ by: 'number', values }]} truth={undefined} optionsHtml={undefined} />,
    );
    return [...container.querySelectorAll('circle')].map((one) => Number(one.getAttribute('cx')));
  };

  it('does not press the others together: it is drawn at the edge, and told as what it is', () => {
    const places = dots([4, 6, 9, 12, 15, 18, 999]);
    expect(places[5]! - places[0]!).toBeGreaterThan(300);
    expect(places[6]).toBeGreaterThan(places[5]!);
    expect(screen.getByText(/from 4 to 999/)).toHaveTextContent('1 of them beyond the picture, drawn at its edge');
  });

  it('is none where all lie within four times what most say', () => {
    dots([0, 0, 0, 0, 5]);
    expect(screen.getByText(/5 answers/)).not.toHaveTextContent('beyond');
  });
});
