/** Runs in the page before the app is there: shows the first words in this browser's language. An entry of its own; it imports nothing. */

/** What the app last noted (`first-words.ts`); null: a first visit, or a window that keeps nothing. */
function noted(): string | null {
  try {
    return localStorage.getItem('stillbeat-first');
  } catch {
    return null;
  }
}

function wanted(): string {
  const language = navigator.languages.map((tag) => tag.slice(0, 2).toLowerCase()).find((tag) => tag === 'en' || tag === 'de');
  return noted() ?? language ?? 'en';
}

// Only the first screen has them; to whom has practised it shows the dogs instead.
if (/^#?\/?$/.test(location.hash)) document.getElementById(`first-${wanted()}`)?.removeAttribute('hidden');
