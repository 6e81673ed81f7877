// The page open twice in one browser: rigs and settings of both are one. Without this the window that
// writes last would undo what the other kept. Counts and speed stay each window's own.
import type { App, Rig } from './app';
import type { Stored } from './storage';

export function followOtherWindows(app: App): void {
  app.storage.follow((stored) => void adopt(app, stored));
}

function textOf(rigs: { id: string; toml: string }[]): string {
  return JSON.stringify(rigs.map(({ id, toml }) => [id, toml]));
}

/** Takes over what the other window keeps. Nothing changes, and nothing is written, where all is the same. */
export async function adopt(app: App, stored: Stored): Promise<void> {
  for (;;) {
    const { rigs, settings } = app.state.get();
    const known = new Map(rigs.map((rig) => [textOf([rig]), rig]));
    const next: Rig[] = await Promise.all(
      stored.rigs.map((rig) => known.get(textOf([rig])) ?? app.readRig(rig)));
    // What changed here meanwhile is looked at again.
    if (app.state.get().rigs !== rigs) continue;
    if (textOf(next) !== textOf(rigs)) app.setRigs(next);
    const merged = { ...settings, ...stored.settings };
    if (JSON.stringify(merged) !== JSON.stringify(settings)) app.changeSettings(stored.settings);
    return;
  }
}
