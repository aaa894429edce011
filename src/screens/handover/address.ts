/** The address under which this very app opens homework: what follows it is the homework itself. */

export function addressOf(): string {
  return `${location.href.replace(/#.*/s, '')}#/homework/`;
}

/** Nobody else reaches an address of this computer alone. */
export function isOnlyHere(): boolean {
  return ['localhost', '127.0.0.1', '[::1]'].includes(location.hostname);
}
