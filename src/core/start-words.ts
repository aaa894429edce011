/** Says why the next session starts where it starts. Apart from the other sentences: the first screen needs no more. */
import { t } from './language.ts';
import type { StartReason } from './next-start.ts';

export function sayStart(why: StartReason): string {
  switch (why.kind) {
    case 'first-session':
      return t('The first session begins on the first step.');
    case 'step-reached':
      return t('You go on from the step you reached.');
    case 'ended-on-a-lift':
      return t('The session ended on a lift, so one step lower.');
    case 'ended-on-a-lift-at-the-easiest':
      return t(
        'The session ended on a lift, and there is no easier step: ask for less of it, or put an easier step into the plan.',
      );
    case 'gap':
      return t('{n} days without practice, so lower.', { n: why.days });
  }
}
