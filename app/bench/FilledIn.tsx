import { LivePanel } from './LivePanel';
import { PrintedSheet } from './PrintedSheet';
import { SheetActions } from './SheetActions';
import { SheetTable } from './SheetTable';
import { useRun, useSheets } from './use-sheets';
import { Verdicts } from './Verdicts';

/** The run against the clock, the sheet to fill in, and what comes of it; nothing while the run can't be read. */
export function FilledIn() {
  const read = useRun();
  const sheets = useSheets(read);
  if (!read.ok) return null;
  return (
    <>
      <LivePanel run={read.run} />
      <SheetTable run={read.run} sheets={sheets} />
      <Verdicts sheets={sheets} />
      <PrintedSheet run={read.run} sheets={sheets} />
      <SheetActions run={read.run} sheets={sheets} />
    </>
  );
}
