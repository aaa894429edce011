/** Pairs heard words into reps: from the onset of a hold to the onset of what ended it. */

export interface HeardWord {
  readonly word: string;
  readonly startedAtS: number;
}

export interface PrintedRep {
  readonly holdAtS: number;
  readonly heldS: number;
  readonly outcome: 'mark' | 'lifted' | 'void';
  readonly step: number | null;
  readonly call: string | null;
}

/** A second hold starts the rep afresh; a mark or lifted without a hold is no rep. */
export function pairReps(words: readonly HeardWord[]): PrintedRep[] {
  const reps: PrintedRep[] = [];
  let holdAtS: number | undefined;
  for (const { word, startedAtS } of words) {
    if (word === 'hold') holdAtS = startedAtS;
    else if ((word === 'mark' || word === 'lifted' || word === 'void') && holdAtS !== undefined) {
      reps.push({ holdAtS, heldS: startedAtS - holdAtS, outcome: word, step: null, call: null });
      holdAtS = undefined;
    }
  }
  return reps;
}
