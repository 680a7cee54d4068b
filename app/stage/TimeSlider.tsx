import { useDesk } from './desk-context';

/** The hand on time. Its value in words is left out where nobody has worked it out yet. */
export function TimeSlider({ valueText, describedBy }: { valueText?: string; describedBy?: string }) {
  const cursorS = useDesk((state) => state.cursorS);
  const endS = useDesk((state) => state.scene.timeline.timeS.at(-1)!);
  const setCursor = useDesk((state) => state.setCursor);
  return (
    <input
      type="range"
      aria-label="Time cursor"
      aria-valuetext={valueText}
      aria-describedby={describedBy}
      min={0}
      max={Math.round(endS)}
      step={1}
      value={Math.round(cursorS)}
      onChange={(event) => setCursor(Number(event.target.value))}
    />
  );
}
