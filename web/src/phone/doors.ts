// What the phone could give this page, door by door: what is here, what is missing, and why, in words
// for the person. Plain functions of what was found; parts/Doors.tsx shows them.
import type { OfflineState } from './offline';
import type { WatchState } from './geolocation';
import type { TiltState } from './tilt';
import type { WakeState } from './wake_lock';

export type DoorId = 'location' | 'tilt' | 'awake' | 'offline' | 'storage';

export interface Door {
  id: DoorId;
  name: string;
  /** `ask`: nothing is in the way; it opens when it is first used. */
  open: 'yes' | 'ask' | 'no';
  /** In two words. */
  label: string;
  words: string;
}

/** What was found of the browser and of how the page was opened. */
export interface Found {
  /** "https:", "http:", "file:". */
  protocol: string;
  secure: boolean;
  location: { watch: WatchState; permission: PermissionState | 'unknown' };
  tilt: TiltState;
  awake: { state: WakeState; wanted: boolean };
  offline: OfflineState;
  oneFile: boolean;
  storage: 'kept' | 'may be cleared' | 'unknown' | 'none';
}

export function doorsOf(found: Found): Door[] {
  return [locationDoor(found), tiltDoor(found), awakeDoor(found), offlineDoor(found), storageDoor(found)];
}

/** Makes the entries of one door; `untried` is its label while it is neither open nor shut. */
function entries(id: DoorId, name: string, untried: string) {
  return (open: Door['open'], words: string): Door =>
    ({ id, name, open, words, label: { yes: 'Here', ask: untried, no: 'Not here' }[open] });
}

/** Why a browser withholds something here, and what would do. */
function howOpened({ protocol, secure }: Found, what: string): string | undefined {
  if (protocol === 'file:' && !secure) {
    return `${what} needs https or this same device as the server: this file was opened from disk, ` +
      'and this browser gives files nothing.';
  }
  if (!secure) {
    return `${what} needs https or this same device as the server: this page came over plain http ` +
      'from another device.';
  }
  return undefined;
}

const BY_HAND = 'Set the speed by hand.';

function locationDoor(found: Found): Door {
  const door = entries('location', 'The phone’s speed', 'Will ask');
  const { watch, permission } = found.location;
  const opened = howOpened(found, 'The phone’s speed');
  if (opened) return door('no', `${opened} ${BY_HAND}`);
  if (watch === 'missing') return door('no', `This browser has no location. ${BY_HAND}`);
  if (permission === 'denied' || watch === 'refused') {
    return door('no', 'Refused for this page. Allow location in the browser’s settings of this page' +
      ` and in the phone’s, then switch it on again. Until then: ${BY_HAND.toLowerCase()}`);
  }
  if (watch === 'fixing') return door('yes', 'The phone knows where it is.');
  if (watch === 'silent' || watch === 'nothing') {
    return door('yes', 'Allowed, but the phone finds no fix now. It needs a clear view of the sky.');
  }
  const disk = found.protocol === 'file:'
    ? ' Opened from disk, some browsers ask each time.' : '';
  if (permission === 'granted') return door('yes', `Allowed.${disk}`);
  return door('ask', `The browser will ask when you switch it on.${disk}`);
}

function tiltDoor(found: Found): Door {
  const door = entries('tilt', 'The phone’s level', 'Not tried yet');
  const opened = howOpened(found, 'The level');
  if (opened) return door('no', opened);
  switch (found.tilt) {
    case 'missing': return door('no', 'This browser has no level. Read the line’s lean by eye.');
    case 'refused': return door('no', 'Refused for this page. Load the page again to be asked again.');
    case 'silent': return door('no', 'This device reads no level.');
    case 'reading': return door('yes', 'The phone reads how it leans.');
    default: return door('ask', 'Most phones have one; it is tried when it is first used.');
  }
}

function awakeDoor(found: Found): Door {
  const door = entries('awake', 'Screen kept on', 'Off');
  const { state, wanted } = found.awake;
  if (state === 'missing') {
    const opened = howOpened(found, 'Keeping the screen on') ?? 'This browser cannot keep the screen on.';
    return door('no', `${opened} Set a longer time in the phone’s display settings.`);
  }
  switch (state) {
    case 'on': return door('yes', 'The screen stays on. Mind the battery.');
    case 'hidden': return door('yes', 'The screen stays on while this page is seen.');
    case 'refused': return door('no', 'The browser refused, as on a low battery or in a saving mode.');
    default: return door(wanted ? 'yes' : 'ask', 'Can be switched on. It costs battery.');
  }
}

function offlineDoor(found: Found): Door {
  const door = entries('offline', 'With no network', 'On its way');
  if (found.oneFile) return door('yes', 'This file has everything in it: keep it, and it opens anywhere.');
  switch (found.offline) {
    case 'ready': return door('yes', 'The page is on this phone and opens with no network.');
    case 'update_waiting':
      return door('yes', 'The page opens with no network. A newer version is here for the next start.');
    case 'installing': return door('ask', 'Being put on this phone: the network is still needed.');
    case 'failed':
      return door('no', 'Not all of the page came through. It is tried again at the next visit.');
    case 'unsupported':
      return door('no', howOpened(found, 'Use with no network') ??
        'This browser, or a private window, keeps no pages. Save the one-file form instead.');
  }
}

function storageDoor({ storage }: Found): Door {
  const door = entries('storage', 'Rigs kept', 'No promise');
  switch (storage) {
    case 'kept': return door('yes', 'Rigs and settings stay until you delete them.');
    case 'may be cleared':
      return door('ask', 'Rigs and settings are kept, but the browser may clear them when the phone ' +
        'runs out of room. Export them too.');
    case 'unknown':
      return door('ask', 'Rigs and settings are kept; this browser does not say for how long. ' +
        'Some clear them after a week without a visit. Export them too.');
    case 'none':
      return door('no', 'This browser keeps nothing here. Export your rigs before you close the page.');
  }
}
