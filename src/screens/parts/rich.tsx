/** A sentence with more than text in its holes: a link, a word in bold. */
import { Fragment, type ReactNode } from 'react';
import { type Message, pieces } from '../../core/language.ts';

interface RichProps {
  readonly say: Message;
  /** What is put into each hole, by its name. */
  readonly with: Readonly<Record<string, ReactNode>>;
}

export function Rich({ say, with: parts }: RichProps) {
  return pieces(say).map((piece, at) => (
    // biome-ignore lint/suspicious/noArrayIndexKey: a piece is its place in the sentence.
    <Fragment key={at}>{typeof piece === 'string' ? piece : parts[piece.hole]}</Fragment>
  ));
}
