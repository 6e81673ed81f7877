// The project's own server, with the built page inside it.
import { spawn, type ChildProcess } from 'node:child_process';
import { once } from 'node:events';
import { existsSync } from 'node:fs';

export interface Served {
  /** "http://127.0.0.1:43211/" */
  address: string;
  close(): Promise<void>;
}

function program(): string {
  const path = process.env['OFFPLUMB_SERVE'];
  if (!path || !existsSync(path)) {
    throw new Error(
      `The tests need the project's server: ${path ?? 'OFFPLUMB_SERVE'} is not there. Build the ` +
      'target offplumb_serve and set OFFPLUMB_SERVE to it.');
  }
  return path;
}

/** The first line of the program's output. */
async function firstLine(child: ChildProcess): Promise<string> {
  let text = '';
  let trouble = '';
  child.stderr?.on('data', (part: Buffer) => { trouble += part.toString(); });
  return new Promise((resolve, reject) => {
    child.once('error', reject);
    child.once('exit', (code) => reject(new Error(`the server ended (${code}): ${trouble}`)));
    child.stdout?.on('data', (part: Buffer) => {
      text += part.toString();
      if (text.includes('\n')) resolve(text.slice(0, text.indexOf('\n')).trim());
    });
  });
}

/** Starts it on a free port of this computer. */
export async function serve(): Promise<Served> {
  const child = spawn(program(), ['--port', '0', '--no-browser'], {
    stdio: ['ignore', 'pipe', 'pipe'],
  });
  const address = await firstLine(child);
  return {
    address: new URL('/', address).href,
    async close() {
      if (child.exitCode !== null || child.signalCode !== null) return;
      const ended = once(child, 'exit');
      child.kill('SIGTERM');
      await ended;
    },
  };
}
