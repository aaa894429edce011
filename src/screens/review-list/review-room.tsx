/** Reads one session back and shows its review. */
import { useEffect, useState } from 'react';
import { Link, useLocation } from 'wouter';
import { homeworkHere } from '../../core/handover/homework.ts';
import { t } from '../../core/language.ts';
import { withNames } from '../../core/named.ts';
import { useApp, useIntents } from '../app-context.tsx';
import { useToReturn } from '../handover/use-to-return.ts';
import { HeardSound } from '../review/heard-sound.tsx';
import { Learned } from '../review/learned.tsx';
import { Review } from '../review/review.tsx';
import css from './review-list.module.css';
import { SessionFile } from './session-file.tsx';

export function ReviewRoom({ sessionId }: { sessionId: string }) {
  const reviewed = useApp((state) => (state.reviewed?.sessionId === sessionId ? state.reviewed : null));
  const library = useApp((state) => state.library);
  const [missing, setMissing] = useState(false);
  const { openReview, practise, correct, undoCorrection, redoCorrection } = useIntents();
  const [, go] = useLocation();
  const isToSend = useToReturn(homeworkHere(library.homework)).some(({ id }) => id === sessionId);
  useEffect(() => {
    void openReview(sessionId).then((found) => setMissing(!found));
  }, [sessionId, openReview]);
  if (missing)
    return (
      <div className="stack">
        <h1>{t('This session is not on this device')}</h1>
        <Link href="/review">{t('All sessions')}</Link>
      </div>
    );
  if (!reviewed) return null;
  const { planId } = reviewed.state.start;
  return (
    <>
      <Review
        state={withNames(reviewed.state, library)}
        next={reviewed.next}
        correcting={{
          ...{ session: reviewed.session, original: reviewed.original, onCorrect: correct },
          onUndo: () => void undoCorrection(),
          onRedo: () => void redoCorrection(),
          soundOf: (eventId) => <HeardSound eventId={eventId} />,
        }}
        learned={<Learned />}
        onPractise={() => void practise(planId).then((begun) => begun && go('/practice'))}
        onDone={() => go('/')}
        {...(isToSend && { onSend: () => go(`/homework/of/${encodeURIComponent(planId)}`) })}
      />
      <SessionFile sessionId={sessionId} state={withNames(reviewed.state, library)} />
      <p className={css.second}>
        <Link href={`/observe/${encodeURIComponent(sessionId)}`}>{t('Score it again from a video: a second observer')}</Link>
      </p>
    </>
  );
}
