/** Takes the words that stood in the page before the app away, and notes for the next visit which to show (`first.ts` reads it). */

/** `next`: a language, or 'none' for somebody who has practised. */
export function leaveFirstWords(next: string): void {
  document.getElementById('first')?.remove();
  try {
    localStorage.setItem('stillbeat-first', next);
  } catch {
    // A window that keeps nothing shows them each time.
  }
}
