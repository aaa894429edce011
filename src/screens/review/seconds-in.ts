/** Reads the seconds that were typed into a form. */

/** The seconds typed into the field `at`; NaN, which is refused with its reason, when it is empty or no number. */
export function secondsIn(form: HTMLFormElement): number {
  const typed = String(new FormData(form).get('at') ?? '').trim();
  return typed === '' ? Number.NaN : Number(typed);
}
