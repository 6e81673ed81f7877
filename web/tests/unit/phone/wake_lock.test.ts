import { describe, expect, test } from 'vitest';
import { ScreenWake, type WakeSurroundings } from '../../../src/phone/wake_lock';

class Sentinel {
  released = false;
  private told: (() => void)[] = [];
  addEventListener(_: 'release', listener: () => void): void { this.told.push(listener); }
  async release(): Promise<void> {
    if (this.released) return;
    this.released = true;
    for (const tell of this.told) tell();
  }
}

function browser() {
  const locks: Sentinel[] = [];
  const it = { visible: true, refuses: false, look: () => {}, locks };
  const around: WakeSurroundings = {
    request: async () => {
      if (it.refuses || !it.visible) throw new DOMException('no', 'NotAllowedError');
      const lock = new Sentinel();
      locks.push(lock);
      return lock;
    },
    visible: () => it.visible,
    onVisibility: (change) => { it.look = change; },
  };
  const rest = (): Promise<void> => new Promise((done) => { setTimeout(done, 0); });
  return { it, around, rest, held: () => locks.filter((lock) => !lock.released).length };
}

describe('keeping the screen on', () => {
  test('is off until somebody wants it, and again when nobody does', async () => {
    const { around, rest, held } = browser();
    const wake = new ScreenWake(around);
    expect(wake.state.get()).toBe('off');
    wake.want('setting', true);
    await rest();
    expect([wake.state.get(), held()]).toEqual(['on', 1]);
    wake.want('run', true);
    wake.want('setting', false);
    await rest();
    expect([wake.state.get(), held()]).toEqual(['on', 1]);
    wake.want('run', false);
    await rest();
    expect([wake.state.get(), held()]).toEqual(['off', 0]);
  });
  test('is taken again when the page is seen again', async () => {
    const { it, around, rest, held } = browser();
    const wake = new ScreenWake(around);
    wake.want('setting', true);
    await rest();
    it.visible = false;
    await it.locks[0]?.release();
    it.look();
    await rest();
    expect([wake.state.get(), held()]).toEqual(['hidden', 0]);
    it.visible = true;
    it.look();
    await rest();
    expect([wake.state.get(), held()]).toEqual(['on', 1]);
  });
  test('tells a refusal, and tries again when seen', async () => {
    const { it, around, rest } = browser();
    it.refuses = true;
    const wake = new ScreenWake(around);
    wake.want('setting', true);
    await rest();
    expect(wake.state.get()).toBe('refused');
    it.refuses = false;
    it.look();
    await rest();
    expect(wake.state.get()).toBe('on');
  });
  test('tells when the browser takes it away in sight', async () => {
    const { it, around, rest } = browser();
    const wake = new ScreenWake(around);
    wake.want('setting', true);
    await rest();
    await it.locks[0]?.release();
    expect(wake.state.get()).toBe('refused');
  });
  test('a change of mind while the browser answers leaves nothing held', async () => {
    const { around, rest, held } = browser();
    const wake = new ScreenWake(around);
    wake.want('setting', true);
    wake.want('setting', false);
    await rest();
    expect([wake.state.get(), held()]).toEqual(['off', 0]);
  });
  test('is missing where the browser cannot', async () => {
    const { around, rest } = browser();
    const wake = new ScreenWake({ ...around, request: undefined });
    wake.want('setting', true);
    await rest();
    expect(wake.state.get()).toBe('missing');
  });
});
