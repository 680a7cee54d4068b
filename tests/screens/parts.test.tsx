import { act, fireEvent, render, screen, within } from '@testing-library/react';
import userEvent from '@testing-library/user-event';
import { useState, type FormEvent } from 'react';
import { describe, expect, it, vi } from 'vitest';
import { Button, ButtonLink } from '@/app/parts/Button';
import { Caution, CautionStrip } from '@/app/parts/Caution';
import { ChartFrame } from '@/app/parts/ChartFrame';
import { Choice } from '@/app/parts/Choice';
import { Dialog } from '@/app/parts/Dialog';
import { Disclosure } from '@/app/parts/Disclosure';
import { Field } from '@/app/parts/Field';
import { IconButton } from '@/app/parts/IconButton';
import { Reading } from '@/app/parts/Reading';
import { Segmented } from '@/app/parts/Segmented';
import { usePressedFirst } from '@/app/parts/use-pressed-first';
import { cautions } from '@/content/cautions';

describe('a button', () => {
  it('does what it says when pressed, and nothing when disabled', async () => {
    const onClick = vi.fn();
    const { rerender } = render(<Button onClick={onClick}>Run the dive</Button>);
    await userEvent.click(screen.getByRole('button', { name: 'Run the dive' }));
    rerender(
      <Button onClick={onClick} disabled>
        Run the dive
      </Button>,
    );
    await userEvent.click(screen.getByRole('button', { name: 'Run the dive' }));
    expect(onClick).toHaveBeenCalledTimes(1);
  });

  it('that has nothing more to do keeps the focus of whoever pressed it, and sends no form off', async () => {
    const sent = vi.fn((event: FormEvent) => event.preventDefault());
    function Last() {
      const [left, setLeft] = useState(1);
      return (
        <form onSubmit={sent}>
          <input aria-label="Any" />
          <Button disabled={left === 0} onClick={() => setLeft(0)}>
            Rub it out
          </Button>
          <IconButton icon="undo" label="Undo" disabled={left === 0} onClick={() => setLeft(-1)} />
          <Button type="submit" disabled>
            Save
          </Button>
        </form>
      );
    }
    render(<Last />);
    const button = screen.getByRole('button', { name: 'Rub it out' });
    button.focus();
    await userEvent.keyboard('{Enter}');
    expect(button).toHaveFocus();
    expect(button).toHaveAttribute('aria-disabled', 'true');
    await userEvent.click(screen.getByRole('button', { name: 'Undo' }));
    expect(button).toHaveAttribute('aria-disabled', 'true');
    await userEvent.type(screen.getByRole('textbox', { name: 'Any' }), '1{Enter}');
    expect(sent).not.toHaveBeenCalled();
  });

  it('is a link when it leads somewhere', () => {
    render(<ButtonLink href="/desk/">Open the desk</ButtonLink>);
    expect(screen.getByRole('link', { name: 'Open the desk' })).toHaveAttribute(
      'href',
      expect.stringMatching(/^\/desk\/?$/),
    );
  });

  it('that is only a drawing still has a name, and says whether it is pressed', () => {
    render(<IconButton icon="covered" label="Cover the readings" pressed />);
    expect(screen.getByRole('button', { name: 'Cover the readings', pressed: true })).toBeInTheDocument();
  });
});

it('a button that is seen to be pressed first answers two quick presses once', async () => {
  const answer = vi.fn();
  function Asking() {
    return <Button {...usePressedFirst(answer)}>Ask</Button>;
  }
  render(<Asking />);
  const button = screen.getByRole('button', { name: 'Ask' });
  fireEvent.click(button);
  expect(button).toHaveAttribute('aria-busy', 'true');
  fireEvent.click(button);
  expect(answer).not.toHaveBeenCalled();
  await vi.waitFor(() => expect(button).toHaveAttribute('aria-busy', 'false'));
  expect(answer).toHaveBeenCalledOnce();
});

describe('a field', () => {
  it('is found by its label and described by its unit and its hint', () => {
    render(<Field label="Depth" unit="m" hint="From 0 to 300 m" defaultValue="30" />);
    const box = screen.getByRole('textbox', { name: 'Depth' });
    expect(box).toHaveValue('30');
    expect(box).toHaveAccessibleDescription('m From 0 to 300 m');
    expect(box).toBeValid();
  });

  it('says what is wrong, in place at once, and aloud when typing pauses', async () => {
    const { rerender } = render(<Field label="Depth" error="“3” is too little." defaultValue="3O" />);
    rerender(<Field label="Depth" error="“3O” is not a number; type figures, such as 30." defaultValue="3O" />);
    const box = screen.getByRole('textbox', { name: 'Depth' });
    expect(box).toBeInvalid();
    expect(box).toHaveAccessibleDescription(/type figures, such as 30/);
    expect(screen.queryByRole('alert')).not.toBeInTheDocument();
    const alert = await screen.findByRole('alert');
    expect(alert, 'by the name of its box').toHaveTextContent(/^Depth: “3O” is not a number/);
    // Asked again by Enter it is new in the page, which is what is read out; the box and its words stay together.
    await userEvent.type(box, '{Enter}');
    expect(alert).not.toBeInTheDocument();
    expect(screen.getByRole('alert')).toHaveTextContent('is not a number');
    expect(box).toHaveAccessibleDescription(/type figures, such as 30/);
    rerender(<Field label="Depth" defaultValue="30" />);
    expect(screen.queryByRole('alert')).not.toBeInTheDocument();
  });

  it('is not said once more by the pause that follows a press', async () => {
    vi.useFakeTimers();
    try {
      const { rerender } = render(<Field label="Depth" defaultValue="30" />);
      act(() => vi.runAllTimers());
      rerender(<Field label="Depth" error="“3O” is not a number." defaultValue="3O" />);
      fireEvent.keyDown(screen.getByRole('textbox', { name: 'Depth' }), { key: 'Enter' });
      const alert = screen.getByRole('alert');
      act(() => vi.runAllTimers());
      expect(alert).toBeInTheDocument();
    } finally {
      vi.useRealTimers();
    }
  });
});

describe('a choice', () => {
  it('hands over the value that was picked', async () => {
    const onChange = vi.fn();
    const options = [
      { value: 'sea', label: 'Sea water' },
      { value: 'fresh', label: 'Fresh water' },
    ] as const;
    render(<Choice label="Water" options={options} value="sea" onChange={onChange} />);
    await userEvent.selectOptions(screen.getByRole('combobox', { name: 'Water' }), 'Fresh water');
    expect(onChange).toHaveBeenCalledWith('fresh');
  });
});

describe('a segmented switch', () => {
  function Speed() {
    const [speed, setSpeed] = useState<'slow' | 'fast'>('slow');
    return (
      <Segmented
        label="Speed"
        segments={[
          { value: 'slow', label: 'Slow' },
          { value: 'fast', label: 'Fast' },
        ]}
        value={speed}
        onChange={setSpeed}
      />
    );
  }

  it('is a named group with one choice taken', async () => {
    render(<Speed />);
    const group = screen.getByRole('group', { name: 'Speed' });
    expect(within(group).getByRole('radio', { name: 'Slow' })).toBeChecked();
    await userEvent.click(within(group).getByRole('radio', { name: 'Fast' }));
    expect(within(group).getByRole('radio', { name: 'Fast' })).toBeChecked();
    expect(within(group).getByRole('radio', { name: 'Slow' })).not.toBeChecked();
  });

  it('is reached with the keyboard', async () => {
    render(<Speed />);
    await userEvent.tab();
    expect(screen.getByRole('radio', { name: 'Slow' })).toHaveFocus();
    await userEvent.keyboard('{ArrowRight}');
    expect(screen.getByRole('radio', { name: 'Fast' })).toBeChecked();
  });
});

describe('a disclosure', () => {
  it('opens on its summary and tells its owner', async () => {
    const onToggle = vi.fn();
    render(
      <Disclosure summary="Working" onToggle={onToggle}>
        p = 1.01325 + 0.1 · 30
      </Disclosure>,
    );
    expect(screen.getByText(/1\.01325/)).not.toBeVisible();
    await userEvent.click(screen.getByText('Working'));
    expect(screen.getByText(/1\.01325/)).toBeVisible();
    expect(onToggle).toHaveBeenLastCalledWith(true);
  });
});

describe('a dialog', () => {
  function Asking({ onClose }: { onClose: () => void }) {
    const [open, setOpen] = useState(false);
    return (
      <>
        <Button onClick={() => setOpen(true)}>Ask</Button>
        <Dialog
          open={open}
          title="Start afresh?"
          onClose={() => {
            setOpen(false);
            onClose();
          }}
        >
          The dive you have now is kept.
        </Dialog>
      </>
    );
  }

  it('opens with its title as its name, and its owner closes it once', async () => {
    const onClose = vi.fn();
    render(<Asking onClose={onClose} />);
    expect(screen.queryByRole('dialog')).not.toBeInTheDocument();
    await userEvent.click(screen.getByRole('button', { name: 'Ask' }));
    expect(screen.getByRole('dialog', { name: 'Start afresh?' })).toHaveTextContent('is kept');
    await userEvent.click(screen.getByRole('button', { name: 'Close' }));
    expect(screen.queryByText('The dive you have now is kept.')).not.toBeInTheDocument();
    expect(onClose).toHaveBeenCalledTimes(1);
  });
});

describe('a reading', () => {
  it('is a named group with its figure, its unit and what is asked', () => {
    render(<Reading label="Stop" value="6" unit="m" tone="stop" note="Stay at 6 m for 2 min" />);
    const reading = screen.getByRole('group', { name: 'Stop' });
    expect(reading).toHaveTextContent('6m');
    expect(reading).toHaveTextContent('Stay at 6 m for 2 min');
  });

  it('keeps a covered figure out of the page altogether, with its note and its working', async () => {
    const onUncover = vi.fn();
    render(
      <Reading
        label="No-stop time"
        value="14"
        unit="min"
        covered
        onUncover={onUncover}
        note="Compartment 3 leads"
        why={<button>Why 14 min?</button>}
      />,
    );
    const reading = screen.getByRole('group', { name: 'No-stop time' });
    expect(reading).not.toHaveTextContent(/14|Compartment/);
    await userEvent.click(within(reading).getByRole('button', { name: 'Uncover No-stop time' }));
    expect(onUncover).toHaveBeenCalledTimes(1);
  });
});

describe('a picture in its frame', () => {
  it('has a title, says what it shows, and has its numbers in a table behind it', async () => {
    render(
      <ChartFrame
        title="Depth in time"
        sentence="Down to 30 m in 2 min."
        columns={[
          { heading: 'Time', cell: (row: { timeMin: number; depthM: number }) => `${row.timeMin} min` },
          { heading: 'Depth', numeric: true, cell: (row) => `${row.depthM} m` },
        ]}
        rows={[
          { timeMin: 0, depthM: 0 },
          { timeMin: 2, depthM: 30 },
        ]}
      >
        <svg aria-hidden="true" />
      </ChartFrame>,
    );
    const figure = screen.getByRole('figure', { name: 'Depth in time' });
    expect(figure).toHaveAccessibleDescription('Down to 30 m in 2 min.');
    await userEvent.click(within(figure).getByText(/^Table of /));
    const row = within(figure).getByRole('row', { name: '2 min 30 m' });
    expect(within(row).getByRole('rowheader')).toHaveTextContent('2 min');
    expect(within(row).getByRole('cell')).toHaveTextContent('30 m');
  });
});

describe('the cautions', () => {
  it('stand in the strip and in the notes with the one wording', () => {
    render(
      <>
        <CautionStrip />
        <Caution about="chamber" />
      </>,
    );
    expect(screen.getByRole('complementary', { name: 'Caution' })).toHaveTextContent(cautions.general);
    expect(screen.getByRole('note')).toHaveTextContent(cautions.chamber);
  });
});
