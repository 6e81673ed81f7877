// How the browser is started by every script and test: nothing of its own goes to the network.
import { existsSync } from 'node:fs';

export const switches = [
  '--no-sandbox', '--disable-gpu', '--disable-quic', '--no-first-run', '--disable-sync',
  '--disable-background-networking', '--disable-component-update',
  '--host-resolver-rules=MAP * ~NOTFOUND , EXCLUDE 127.0.0.1',
];

/** The browser's program: Debian's, or what CHROMIUM says. */
export function chromiumProgram() {
  const path = process.env.CHROMIUM ?? '/usr/bin/chromium';
  if (existsSync(path)) return path;
  throw new Error(`This needs a Chromium: ${path} is not there. Install it, or set CHROMIUM to it.`);
}

export function chromiumOptions() {
  return { executablePath: chromiumProgram(), args: switches };
}
