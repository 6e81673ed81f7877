// What the browser and the way the page was opened allow: asked of the browser, without disturbing
// the person.
import type { Phone } from './start';
import type { Found } from './doors';

async function permission(): Promise<PermissionState | 'unknown'> {
  try {
    return (await navigator.permissions.query({ name: 'geolocation' })).state;
  } catch {
    return 'unknown';
  }
}

/** Whether texts can be kept, and whether the browser promised not to clear them. */
async function storage(): Promise<Found['storage']> {
  try {
    const key = 'offplumb-look-around';
    localStorage.setItem(key, '1');
    localStorage.removeItem(key);
  } catch {
    return 'none';
  }
  try {
    return (await navigator.storage.persisted()) ? 'kept' : 'may be cleared';
  } catch {
    return 'unknown';
  }
}

export async function lookAround(phone: Phone, keepAwake: boolean): Promise<Found> {
  return {
    protocol: location.protocol,
    secure: globalThis.isSecureContext === true,
    location: { watch: phone.speed.watch.state.get(), permission: await permission() },
    tilt: phone.tilt.state.get().state,
    awake: { state: phone.wake.state.get(), wanted: keepAwake },
    offline: phone.offline.state,
    oneFile: ONE_FILE,
    storage: await storage(),
  };
}

/** Asks the browser to keep what is kept here. False: it would not. */
export async function askToKeep(): Promise<boolean> {
  try {
    return await navigator.storage.persist();
  } catch {
    return false;
  }
}
