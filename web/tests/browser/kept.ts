// What the page finds in the browser's storage at its start, as src/state/storage.ts writes it.
import type { BrowserContext } from 'playwright-core';
import type { Hand } from '../../src/state/sea';
import type { Settings } from '../../src/state/app';

export interface Kept {
  /** Texts of rig files; none: the page starts with its examples. */
  rigs?: string[];
  look?: Settings['look'];
  units?: Settings['units'];
  /** Counts, speed, current: what is not given is as on a first visit. */
  hand?: Partial<Hand>;
}

function textOf({ rigs = [], look, units, hand = {} }: Kept): string {
  return JSON.stringify({
    format: 'offplumb-page',
    version: 1,
    rigs: rigs.map((toml, i) => ({ id: `rig-${i}`, toml })),
    activeRig: '',
    hand,
    settings: { ...(look && { look }), ...(units && { units }) },
  });
}

/** Puts it there before the page first runs; what the page writes later stays. */
export async function keep(context: BrowserContext, kept: Kept): Promise<void> {
  if (Object.keys(kept).length === 0) return;
  await context.addInitScript((text) => {
    try {
      if (localStorage.getItem('offplumb') === null) localStorage.setItem('offplumb', text);
    } catch {
      // The empty page that a browser starts with has no storage.
    }
  }, textOf(kept));
}
