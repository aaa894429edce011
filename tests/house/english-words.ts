/** Words by which an English sentence gives itself away among German ones; none of them is German too. */

const ENGLISH = new Set(
  [
    'the and of with you your is are for from this that to be it or on has have had its as by into',
    'step steps trial trials lift lifts held kept dog treat treats ear heard session sessions ladder',
    'when which than then there their they but only one two no again more less before after every each',
  ].flatMap((line) => line.split(' ')),
);

/** The English words of a sentence; what is put into its holes is left out. */
export function englishIn(sentence: string): readonly string[] {
  const words = sentence.replaceAll(/\{\w+\}/g, ' ').match(/\p{L}+/gu) ?? [];
  return words.filter((word) => ENGLISH.has(word.toLowerCase()));
}
