import { spawn } from 'node:child_process';
import { createInterface } from 'node:readline';
import { repositoryRoot } from '../../app/commands/site/build-site';

/** What a step counts while it runs. */
export interface Counts {
  passed: number;
  failed: number;
  /** Made in another run, when it is their turn. */
  waiting: number;
  files: number;
  ofFiles: number;
}

/** A line of a step's output that begins with this is its counts, as JSON. */
export const COUNT_MARK = '\u0001counts ';

export interface Step {
  readonly name: string;
  /** Commands one after another, each a script under node_modules or a path in the repository, and its arguments. */
  readonly commands: readonly (readonly string[])[];
  /** It counts tests, and tells by itself what failed. */
  readonly counts?: boolean;
  /** Steps that must have passed before. */
  readonly after?: readonly string[];
}

export interface Outcome {
  readonly ok: boolean;
  readonly counts: Counts;
}

/**
 * Runs a step. What a step that counts says on its second stream is told as it comes; of any other step what it said is
 * told when it fails.
 */
export async function runStep(
  { commands, counts: counting = false }: Step,
  env: Readonly<Record<string, string>>,
  tell: (text: string) => void,
  onCounts: (counts: Counts) => void,
): Promise<Outcome> {
  let counts: Counts = { passed: 0, failed: 0, waiting: 0, files: 0, ofFiles: 0 };
  for (const command of commands) {
    const said: string[] = [];
    const hear = (line: string, aloud: boolean) => {
      if (line.startsWith(COUNT_MARK)) onCounts((counts = JSON.parse(line.slice(COUNT_MARK.length)) as Counts));
      else if (aloud) tell(line);
      else said.push(line);
    };
    const child = spawn(process.execPath, command, {
      cwd: repositoryRoot,
      stdio: ['ignore', 'pipe', 'pipe'],
      env: { ...process.env, ...env },
    });
    createInterface(child.stdout).on('line', (line) => hear(line, false));
    createInterface(child.stderr).on('line', (line) => hear(line, counting));
    const status = await new Promise<number | null>((resolve) => child.on('close', resolve));
    if (status === 0) continue;
    if (!counting || counts.failed === 0) said.forEach(tell);
    return { ok: false, counts };
  }
  return { ok: counts.failed === 0, counts };
}
