/** Keeps a number and its unit on one line. */

const NO_BREAK_SPACE = '\u00a0';

export function unbroken(words: string): string {
  return words.replaceAll(/(?<=\d) (?=(?:s|min)\b)/g, NO_BREAK_SPACE);
}
