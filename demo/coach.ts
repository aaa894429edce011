/** Two ways into the real engine: rep by rep through its decisions (fast), and word by word through the log (as the app does it). */
import type { Call } from '../src/core/call.ts';
import { applyCall, byRule, countRep, decide, type Judge, type Standing } from '../src/core/criterion.ts';
import type { SessionStart } from '../src/core/event.ts';
import { standAt } from '../src/core/next-start.ts';
import type { EndedRep } from '../src/core/rep.ts';
import type { Word } from '../src/core/word.ts';
import { open, type Played, say } from './typed-session.ts';

/** Hears reps, gives calls. The handler obeys, so every call is made. */
export interface Coach {
  standing(): Standing;
  hear(rep: EndedRep): readonly Call[];
}

/** Changes what the engine advises, to try a rule that the engine does not have; the usual one changes nothing. */
export interface Trial {
  readonly judge?: Judge;
  readonly amend?: (calls: readonly Call[], before: Standing, rep: EndedRep) => readonly Call[];
  /** Where a session begins. */
  readonly begin?: (standing: Standing) => Standing;
}

export function quickCoach(start: SessionStart, trial: Trial = {}): Coach {
  const { judge = byRule, amend = (calls) => calls, begin = (standing) => standing } = trial;
  let standing = begin(standAt(start));
  return {
    standing: () => standing,
    hear: (rep) => {
      const before = standing;
      const calls = amend(decide(before, rep, rep.endAtS, start.limits, judge), before, rep);
      standing = calls.reduce(applyCall, countRep(before, rep, judge));
      return calls;
    },
  };
}

const LAST_WORD: Readonly<Record<EndedRep['outcome'], Word>> = { kept: 'mark', short: 'mark', lifted: 'lifted', void: 'void' };

/** Says every rep in words, so that the log, its fold and the step function do all the work. */
export function spokenCoach(start: SessionStart): Coach {
  let played: Played = open(start);
  return {
    standing: () => played.state.standing,
    hear: (rep) => {
      const before = played.state.reps.length;
      if (rep.voidReason !== 'not-offered') played = say(played, 'hold', rep.holdAtS);
      played = say(played, LAST_WORD[rep.outcome], rep.endAtS);
      const latest = played.state.reps[before];
      if (!latest || latest.outcome !== rep.outcome) throw new Error(`coach: said ${rep.outcome}, counted ${latest?.outcome}`);
      return latest.calls;
    },
  };
}
