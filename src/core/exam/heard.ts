/** Says which words count in an examination: few, so that nothing has to be thought of. */
import type { Heard, Word } from '../word.ts';

/**
 * By ear *hold*, *lifted* and *pause* with its end. The marker as well: a dog that was paid by habit is not holding any more,
 * and its seconds must not run on. It judges nothing here.
 */
const BY_EAR: ReadonlySet<Word> = new Set(['hold', 'lifted', 'pause', 'resume', 'mark']);
/** A hand besides goes through the list (*harder*: the next item, *easier*: the one before), takes back, and ends. */
const BY_HAND: ReadonlySet<Word> = new Set([...BY_EAR, 'harder', 'easier', 'undo', 'finish']);

export function isHeardInExam({ word, by }: Heard): boolean {
  return (by === 'button' || by === 'key' ? BY_HAND : BY_EAR).has(word);
}
