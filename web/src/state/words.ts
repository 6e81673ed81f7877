// Parts of sentences that several screens need, worded as the command line words them.
import type { ComparedRig } from '../engine/answers';
import type { Shower } from './shown';

/** "the lure", "the low lure", "lure 2": of a clip, counted from the lowest. */
export function lureName(clips: readonly { name: string }[], index: number): string {
  if (clips.length < 2) return 'the lure';
  const name = clips[index]?.name ?? '';
  return name === '' ? `lure ${index + 1}` : `the ${name} lure`;
}

export function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}

/** What ends the reach, after "at a count of 313 ft, ". */
export function reachEnd(
  ends: ComparedRig['reach_ends_by'], largest_angle_deg: number, shower: Shower): string {
  if (ends === 'line_on_reel') return 'where the line on the reel ends';
  return `where the line leans ${shower.quantity((largest_angle_deg * Math.PI) / 180, 'angle')} at the boom`;
}

/** The name written in a rig's text, for one that the engine cannot read. */
export function writtenName(toml: string): string {
  const found = /^[ \t]*name[ \t]*=[ \t]*(?:"([^"\r\n]*)"|'([^'\r\n]*)')/m.exec(toml);
  return found?.[1] || found?.[2] || 'A rig without a name';
}
