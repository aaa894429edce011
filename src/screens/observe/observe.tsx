/** The second observer's screen: a recording of a session is scored again, then held against what was noted in practice. */
import { useCallback, useEffect, useRef, useState } from 'react';
import { Link } from 'wouter';
import type { SessionState } from '../../core/fold.ts';
import { t } from '../../core/language.ts';
import { nameOf, withNames } from '../../core/named.ts';
import { type Observation, type Observed, sessionWords } from '../../core/observe/observation.ts';
import { settingsOf } from '../../core/settings.ts';
import { useApp, useIntents } from '../app-context.tsx';
import { sayWhen } from '../parts/when.ts';
import { Agreement } from './agreement.tsx';
import { EarRun } from './ear-run.tsx';
import { LineUp } from './line-up.tsx';
import css from './observe.module.css';
import { Noted, Pad } from './pad.tsx';
import { ChooseFile, Player } from './player.tsx';
import { compareAt, lineUp, NOTHING_SCORED, note, type Scoring, strike, takeBack } from './scoring.ts';

export function ObserveScreen({ sessionId }: { sessionId: string }) {
  const { readSession } = useIntents();
  const live = useApp((state) => state.live !== null && state.live.phase.phase !== 'ended');
  const [read, setRead] = useState<{ state: SessionState | null } | null>(null);
  useEffect(() => {
    let wanted = true;
    void readSession(sessionId).then((state) => wanted && setRead({ state }));
    return () => {
      wanted = false;
    };
  }, [sessionId, readSession]);
  if (!read) return null;
  if (!read.state || live)
    return (
      <div className="stack">
        <h1>{live ? t('A session is running') : t('This session is not on this device')}</h1>
        <Link href={live ? '/practice' : '/review'}>{live ? t('Finish it first') : t('All sessions')}</Link>
      </div>
    );
  return <Observe sessionId={sessionId} state={read.state} />;
}

/** What is being scored, and from which file. */
interface InHand {
  readonly id: string | null;
  readonly file: File | null;
  readonly fileName: string;
  readonly lengthS: number;
  readonly scoring: Scoring;
}

const EMPTY: InHand = { id: null, file: null, fileName: '', lengthS: 0, scoring: NOTHING_SCORED };

function Observe({ sessionId, state }: { sessionId: string; state: SessionState }) {
  const [hand, setHand] = useState(EMPTY);
  const library = useApp((all) => all.library);
  const video = useRef<HTMLVideoElement>(null);
  const { start, startedAt } = withNames(state, library);
  const saved = library.observations.filter((each) => each.sessionId === sessionId);
  const change = useCallback((scored: (scoring: Scoring) => Scoring) => {
    setHand((before) => ({ ...before, scoring: scored(before.scoring) }));
  }, []);
  return (
    <div className="stack wide">
      <header className="stack">
        <h1>{t('A second observer: {dog}, {plan}', { dog: start.dogName, plan: start.planTitle })}</h1>
        <p className="soft">{sayWhen(startedAt)}</p>
        <p>{t('Score the session again from a recording of it, without looking at what was noted in practice. Then compare.')}</p>
      </header>
      <Saved saved={saved} onOpen={(each) => setHand((before) => ({ ...opened(each), file: before.file }))} />
      {hand.file ? (
        <Scored {...{ hand, video, change, handler: state.start.handler }} onHand={setHand} />
      ) : (
        <ChooseFile
          wanted={hand.fileName || null}
          onFile={(file) => setHand((before) => ({ ...before, file, fileName: file.name }))}
        />
      )}
      <Compared {...{ hand, sessionId, state, video, change }} onHand={setHand} />
      <Link href={`/review/${encodeURIComponent(sessionId)}`}>{t('Back to the review')}</Link>
    </div>
  );
}

function opened({ id, fileName, lengthS, words, by, offsetS }: Observation): InHand {
  return {
    id,
    file: null,
    fileName,
    lengthS,
    scoring: { ...NOTHING_SCORED, by, words, compared: true, lineUp: { how: 'by-hand', offsetS } },
  };
}

function Saved({ saved, onOpen }: { saved: readonly Observation[]; onOpen: (observation: Observation) => void }) {
  const library = useApp((state) => state.library);
  if (saved.length === 0) return null;
  return (
    <section className="stack">
      <h2>{t('Scored before')}</h2>
      <ul className={css.moments}>
        {saved.map((each) => (
          <li key={each.id}>
            <span>
              {t('{observer}, {n} words from {file}', {
                observer: each.by === 'ear' ? t('The app’s ear') : nameOf(library.handlers, each.observer),
                ...{ n: each.words.length, file: each.fileName },
              })}
            </span>
            <button type="button" onClick={() => onOpen(each)}>
              {t('Open')}
            </button>
          </li>
        ))}
      </ul>
    </section>
  );
}

interface PartProps {
  readonly hand: InHand;
  readonly video: React.RefObject<HTMLVideoElement | null>;
  readonly change: (scored: (scoring: Scoring) => Scoring) => void;
  readonly onHand: React.Dispatch<React.SetStateAction<InHand>>;
}

function Scored({ hand, video, change, onHand, handler }: PartProps & { handler: string }) {
  const onWord = useCallback((word: Observed) => change((scoring) => note({ ...scoring, by: 'keys' }, word)), [change]);
  const onTakeBack = useCallback(() => change(takeBack), [change]);
  if (!hand.file) return null;
  const heard = (words: readonly Observed[], lengthS: number) =>
    onHand((before) => ({ ...before, id: null, lengthS, scoring: { ...NOTHING_SCORED, by: 'ear', words } }));
  return (
    <section className="stack" aria-label={t('Scoring')}>
      <div className={css.player}>
        <Player file={hand.file} video={video} onLength={(lengthS) => onHand((before) => ({ ...before, lengthS }))} />
        <Pad {...{ video, onWord, onTakeBack }} />
      </div>
      <p className="soft">
        {t('Press at the beginning of each word, or when you see it.')}{' '}
        {t('Being always a little late does no harm: it is taken out when the two are lined up.')}
      </p>
      <Noted
        {...{ words: hand.scoring.words, latest: hand.scoring.latest, onTakeBack, onJump: jumper(video) }}
        onStrike={(word) => change((scoring) => strike(scoring, word))}
      />
      <details className={css.details}>
        <summary>{t('Or let the app’s ear score the sound of it')}</summary>
        {hand.scoring.words.length > 0 ? (
          <p>
            {t('It begins a scoring of its own: save yours first ({n} noted), or it is replaced.', {
              n: hand.scoring.words.length,
            })}
          </p>
        ) : null}
        <EarRun file={hand.file} handler={handler} onHeard={heard} />
      </details>
    </section>
  );
}

/** So much is seen before the place itself, s. */
const LEAD_S = 2;

function jumper(video: PartProps['video']): (atS: number) => void {
  return (atS) => {
    const film = video.current;
    if (!film) return;
    film.currentTime = Math.max(0, atS - LEAD_S);
    film.scrollIntoView({ block: 'nearest' });
    // A browser may refuse to play before a tap on the film itself; the place is shown all the same.
    void film.play().catch(() => undefined);
  };
}

function Compared({ hand, sessionId, state, video, change, onHand }: PartProps & { sessionId: string; state: SessionState }) {
  const { saveObservation, newId } = useIntents();
  const observer = useApp(({ library }) => settingsOf(library).handler);
  const [said, setSaid] = useState('');
  const { scoring, lengthS, fileName } = hand;
  if (scoring.words.length === 0) return null;
  if (!scoring.compared)
    return (
      <button type="button" className="primary" onClick={() => change((before) => ({ ...before, compared: true }))}>
        {t('Compare')}
      </button>
    );
  const session = { words: sessionWords(state), lengthS: state.latestS };
  const found = lineUp(session, scoring);
  const comparison = found && compareAt(session, scoring.words, Math.max(lengthS, scoring.words.at(-1)?.atS ?? 0), found.offsetS);
  const save = async (offsetS: number) => {
    const id = hand.id ?? newId();
    const { by, words } = scoring;
    await saveObservation({ id, sessionId, observer, by, fileName, lengthS, words, offsetS });
    onHand((before) => ({ ...before, id }));
    setSaid(t('Saved beside the session. It changes nothing in it.'));
  };
  return (
    <section className="stack">
      <h2>{t('Practice and second observer')}</h2>
      <LineUp wish={scoring.lineUp} found={found} onWish={(wish) => change((before) => ({ ...before, lineUp: wish }))} />
      {found && !comparison ? <p role="alert">{t('At this offset the recording shows nothing of the session.')}</p> : null}
      {found && comparison ? (
        <>
          <Agreement comparison={comparison} onJump={hand.file ? (atS) => jumper(video)(atS - found.offsetS) : null} />
          <div className="row">
            <button type="button" className="primary" onClick={() => void save(found.offsetS)}>
              {t('Save this scoring')}
            </button>
            <span role="status">{said}</span>
          </div>
        </>
      ) : null}
    </section>
  );
}
