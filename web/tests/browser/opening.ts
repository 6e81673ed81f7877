// Opens the page in a browser of its own.
import { mkdtemp, rm } from 'node:fs/promises';
import { existsSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { chromium, type BrowserContext, type Page } from 'playwright-core';
import { inject } from 'vitest';
import { Faults } from './faults';
import { keep, type Kept } from './kept';
import { serve, type Served } from './serving';

declare module 'vitest' {
  interface ProvidedContext {
    pageFolder: string;
    singleFile: string;
  }
}

/** Of the screens, by their address. */
export const screens = [
  'line', 'let-out', 'speed', 'card', 'compare', 'rigs', 'settings', 'more',
] as const;
export type Screen = (typeof screens)[number];

export const phone = { width: 390, height: 844 };
export const laptop = { width: 1366, height: 768 };

export interface Opening extends Kept {
  /** `static`: from the project's server, or from `host`. `single`: the one file, from the disk. */
  form?: 'static' | 'single';
  host?: Served;
  size?: { width: number; height: number };
  touch?: boolean;
  geolocation?: { latitude: number; longitude: number; accuracy?: number };
  permissions?: string[];
  reducedMotion?: boolean;
  screen?: Screen;
}

export interface Opened {
  page: Page;
  context: BrowserContext;
  address: string;
  faults: Faults;
  /** The server; none for the one file. */
  server: Served | undefined;
  /** Goes to a screen, and waits until it is there. */
  show(screen: Screen): Promise<void>;
  /** Closes the page and opens it anew in the same browser: the next start. */
  startAgain(): Promise<Page>;
  /** Server and network both gone. */
  cutNetwork(): Promise<void>;
}

const switches = [
  '--no-sandbox', '--disable-gpu', '--disable-quic', '--no-first-run', '--disable-sync',
  '--disable-background-networking', '--disable-component-update',
  '--host-resolver-rules=MAP * ~NOTFOUND , EXCLUDE 127.0.0.1',
];

function browserProgram(): string {
  const path = process.env['CHROMIUM'] ?? '/usr/bin/chromium';
  if (existsSync(path)) return path;
  throw new Error(`The tests need a Chromium: ${path} is not there. Install it, or set CHROMIUM to it.`);
}

async function launch(profile: string, opening: Opening): Promise<BrowserContext> {
  const { size = phone, touch = size.width < 800, geolocation, permissions } = opening;
  return chromium.launchPersistentContext(profile, {
    executablePath: browserProgram(),
    args: switches,
    viewport: size,
    hasTouch: touch,
    isMobile: touch,
    locale: 'en-US',
    reducedMotion: opening.reducedMotion ? 'reduce' : 'no-preference',
    ...(geolocation && { geolocation }),
    ...(permissions && { permissions }),
  });
}

/** Waits for the engine; if it did not start, fails with the words on the page. */
export async function ready(page: Page): Promise<void> {
  const said = page.locator('html[data-engine="ready"], html[data-engine="failed"]');
  await said.waitFor({ state: 'attached', timeout: 30_000 });
  if ((await said.getAttribute('data-engine')) === 'failed') {
    throw new Error(`the engine did not start: ${await page.locator('body').innerText()}`);
  }
}

/** Waits until a screen is drawn and nothing is being worked out on it. */
async function settled(page: Page): Promise<void> {
  await page.getByText(/^One moment/).waitFor({ state: 'hidden' });
  await page.locator('main').waitFor();
  await page.locator('[aria-busy="true"]').waitFor({ state: 'detached', timeout: 60_000 });
  await page.evaluate(() => new Promise((done) => {
    requestAnimationFrame(() => requestAnimationFrame(done));
  }));
}

function opened(context: BrowserContext, page: Page, address: string, faults: Faults,
  server: Served | undefined): Opened {
  return {
    page, context, address, faults, server,
    async show(screen) {
      await this.page.evaluate((to) => { location.hash = to; }, screen);
      await settled(this.page);
    },
    async startAgain() {
      // Away first: the browser itself ends with its last page.
      await this.page.goto('about:blank');
      const next = await context.newPage();
      await this.page.close();
      this.page = next;
      await next.goto(address);
      await ready(next);
      return next;
    },
    async cutNetwork() {
      await server?.close();
      await context.setOffline(true);
    },
  };
}

async function placeOf(opening: Opening): Promise<{ address: string; home: string[]; server?: Served }> {
  if (opening.form === 'single') {
    const file = inject('singleFile');
    if (!existsSync(file)) throw new Error(`${file} is not there. Build it first: npm run build`);
    const address = pathToFileURL(file).href;
    return { address, home: [address] };
  }
  const server = opening.host ?? await serve();
  return { address: server.address, home: [server.address], server };
}

/** Opens it; `onEnd` takes what is to be done when the test is over, last first. */
export async function open(
  opening: Opening, onEnd: (undo: () => Promise<void>) => void): Promise<Opened> {
  const { address, home, server } = await placeOf(opening);
  if (server) onEnd(() => server.close());
  const profile = await mkdtemp(join(tmpdir(), 'offplumb-browser-'));
  onEnd(() => rm(profile, { recursive: true, force: true, maxRetries: 5 }));
  const context = await launch(profile, opening);
  onEnd(() => context.close());
  const faults = new Faults(context, home);
  onEnd(async () => {
    const found = faults.list();
    if (found.length > 0) throw new Error(`faults on the page:\n  ${found.join('\n  ')}`);
  });
  await keep(context, opening.rigs || opening.look || opening.units || opening.hand ? opening : {});
  const page = context.pages()[0] ?? await context.newPage();
  const result = opened(context, page, address, faults, server);
  await page.goto(opening.screen ? `${address}#${opening.screen}` : address);
  await ready(page);
  await settled(page);
  return result;
}
