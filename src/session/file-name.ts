/** Makes names of files from what was typed: letters and digits of any script, so that no system reads a path, a flag or markup in them. */

/** A phone's list shows as much of a name; some systems allow 255 bytes, and a letter may have four. */
const LONGEST = 40;

/** "left-ear-drops" of "Left ear: drops!"; '' when nothing is left. */
export function forFileName(typed: string): string {
  const parts = typed.normalize('NFC').match(/[\p{L}\p{M}\p{N}]+/gu) ?? [];
  return [...parts.join('-')].slice(0, LONGEST).join('').replace(/-$/, '');
}

/** `stillbeat-plan-left-ear-2026-03-02.json`. */
export function fileName(what: readonly string[], day: string, ending: string): string {
  return `${['stillbeat', ...what.map(forFileName), day].filter(Boolean).join('-')}.${ending}`;
}
