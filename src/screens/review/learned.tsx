/** What the corrections of a session can teach the ear, what they taught, and the way back. */
import { useEffect, useState } from 'react';
import { t } from '../../core/language.ts';
import { useApp, useIntents } from '../app-context.tsx';
import { sayChange, sayToLearn } from './learn-words.ts';
import css from './review.module.css';

type Intents = ReturnType<typeof useIntents>;
type Lesson = NonNullable<Awaited<ReturnType<Intents['lookAtLesson']>>>;
type Change = NonNullable<Awaited<ReturnType<Intents['learn']>>>;

type Doing = { readonly kind: 'nothing' | 'working' } | { readonly kind: 'learned'; readonly change: Change | null };

export function Learned() {
  const { learn, unlearn } = useIntents();
  const { lesson, lookAgain } = useLesson();
  const [doing, setDoing] = useState<Doing>({ kind: 'nothing' });
  if (!lesson || lesson.toLearn + lesson.learned + lesson.without === 0) return null;
  const working = doing.kind === 'working';
  const teach = async () => {
    setDoing({ kind: 'working' });
    const change = await learn();
    setDoing({ kind: 'learned', change });
    lookAgain();
  };
  const back = async () => {
    setDoing({ kind: 'working' });
    await unlearn();
    setDoing({ kind: 'nothing' });
    lookAgain();
  };
  return (
    <section className={css.corrections} aria-label={t('What the ear learns')}>
      <p role="status">
        {working
          ? t('Teaching the ear…')
          : doing.kind === 'learned' && lesson.toLearn === 0
            ? sayChange(doing.change)
            : sayToLearn(lesson)}
      </p>
      <div className="row">
        {lesson.toLearn > 0 && lesson.ofAnother === null ? (
          <button type="button" disabled={working} onClick={() => void teach()}>
            {t('Teach the ear')}
          </button>
        ) : null}
        {lesson.learned > 0 ? (
          <button type="button" disabled={working} onClick={() => void back()}>
            {t('Forget what this session taught')}
          </button>
        ) : null}
      </div>
    </section>
  );
}

/** Looked at anew whenever the session is put right, or another handler's turn comes. */
function useLesson(): { lesson: Lesson | null; lookAgain: () => void } {
  const session = useApp(({ reviewed }) => reviewed?.session ?? null);
  const library = useApp((state) => state.library);
  const { lookAtLesson } = useIntents();
  const [lesson, setLesson] = useState<Lesson | null>(null);
  const [looks, setLooks] = useState(0);
  useEffect(() => {
    let wanted = session !== null && library !== null && looks >= 0;
    void lookAtLesson().then((found) => wanted && setLesson(found));
    return () => {
      wanted = false;
    };
  }, [session, library, looks, lookAtLesson]);
  return { lesson, lookAgain: () => setLooks((n) => n + 1) };
}
