/** Says which words make sense now, so that the ear may ask more of the others. */

/** A mark without a hold is only a question, and a second hold is rare: both must be said more clearly. */
const ODD_WHILE_HOLDING: readonly string[] = ['hold', 'resume', 'easier', 'harder', 'stay'];
const ODD_WHILE_WAITING: readonly string[] = ['mark', 'lifted', 'resume'];
/** A pause is for talking: nothing but its end is waited for. */
export const EXPECTED_IN_PAUSE: readonly string[] = ['resume'];

/** Those of `words` that may well come next; words that belong to neither moment may come at any time. */
export function expectedOf(words: readonly string[], holding: boolean): readonly string[] {
  const odd = holding ? ODD_WHILE_HOLDING : ODD_WHILE_WAITING;
  return words.filter((word) => !odd.includes(word));
}
