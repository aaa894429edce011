/** The sound check: teach three words, let it hear what else you say, see what it will miss, hear the beats. */
import { useEffect, useState } from 'react';
import { Link } from 'wouter';
import { type Message, t } from '../../core/language.ts';
import { settingsOf } from '../../core/settings.ts';
import { type SpokenWord, TALK } from '../../core/word.ts';
import { useApp, useIntents } from '../app-context.tsx';
import { HandlerSwitch } from '../parts/handler-switch.tsx';
import { Level } from '../parts/level.tsx';
import { wordName } from '../parts/word-names.ts';
import { Forecast } from './forecast.tsx';
import { FromFiles } from './from-files.tsx';
import { LiveTrouble } from './live-trouble.tsx';
import { MoreWords } from './more-words.tsx';
import css from './sound-check.module.css';
import { TakeRow, Takes } from './take-row.tsx';
import { TryOut } from './try-out.tsx';
import { useTakes } from './use-takes.ts';
import { WordsFile } from './words-file.tsx';

/** What each word means, and one thing that might be said; any sound of the handler's own will do. */
const WORDS = [
  ['hold', 'the dog has settled, the hold begins', 'steady'],
  ['mark', 'paid: this ends the hold', 'yes#said when paid'],
  ['lifted', 'the head came up: the dog said no', 'oh well'],
] as const satisfies readonly (readonly [SpokenWord, meaning: Message, example: Message])[];

const TAKES_A_WORD = 3;
const TAKES_A_PHRASE = 2;
const TALK_S = 10;

/** What is asked for as talk; each is kept under its English name, whatever the language. */
const PHRASES = ['your dog’s name', 'your praise', 'another cue you use'] as const satisfies readonly Message[];

const ENOUGH_TALK = TAKES_A_PHRASE * PHRASES.length;

export function SoundCheck() {
  const { leaveSoundCheck } = useIntents();
  const takes = useTakes();
  const handler = useApp((state) => settingsOf(state.library).handler);
  // The microphone closes with the screen: what is said elsewhere is not a take.
  useEffect(() => () => void leaveSoundCheck(), [leaveSoundCheck]);
  return (
    <div className="stack wide">
      <header className="stack">
        <h1>{t('Sound check')}</h1>
        <p>
          {t(
            'Put the phone where it will stand, then teach it your three words. Say them as you will in practice, each followed by a short pause. Short and unlike each other is best: other vowels, other lengths. The takes stay on this device.',
          )}
        </p>
        <HandlerSwitch mayAdd={true} />
      </header>
      <EarTrouble />
      {/* Another handler's rows begin afresh: what was typed for one is not said by the other. */}
      <Words key={`words of ${handler}`} />
      <Talk key={`talk of ${handler}`} />
      <Forecast />
      <TryOut />
      <Beats />
      <WordsFile any={takes.size > 0} />
    </div>
  );
}

function EarTrouble() {
  const ear = useApp((state) => state.ear);
  if (ear.state !== 'blocked' && ear.state !== 'degraded') return null;
  return (
    <p role="alert" className={css.trouble}>
      {ear.why === 'not-secure'
        ? t('A page needs HTTPS to be given a microphone: the README says how. Recordings from files work.')
        : t(
            'The microphone cannot be opened. Allow it for this page in the browser’s settings and try again, or add recordings from files.',
          )}
    </p>
  );
}

/** The one thing to do next: the first word or phrase that wants takes, in reading order; null: ready. */
function useNext(): string | null {
  const takes = useTakes();
  const word = WORDS.find(([each]) => (takes.get(each)?.length ?? 0) < TAKES_A_WORD)?.[0];
  const talk = takes.get(TALK) ?? [];
  const phrase = PHRASES.find((each) => talk.filter(({ said }) => said === each).length < TAKES_A_PHRASE);
  // Recordings may all have come in under one phrase: enough talk is enough.
  return word ?? (talk.length >= ENOUGH_TALK ? null : (phrase ?? null));
}

function Words() {
  const takes = useTakes();
  const next = useNext();
  return (
    <section className="stack">
      <h2>{t('1 · Your words')}</h2>
      <ul className={css.rows}>
        {WORDS.map(([word, meaning, example]) => (
          <TakeRow
            key={word}
            word={word}
            title={wordName(word)}
            meaning={t(meaning)}
            example={t(example)}
            takes={takes.get(word) ?? []}
            wanted={TAKES_A_WORD}
            isNext={next === word}
          />
        ))}
      </ul>
      <MoreWords wanted={TAKES_A_WORD} />
    </section>
  );
}

function Talk() {
  const talk = useTakes().get(TALK) ?? [];
  const other = talk.filter(({ said }) => said === TALK);
  const next = useNext();
  return (
    <section className="stack">
      <h2>{t('2 · What else you say')}</h2>
      <p>
        {t('The more of your ordinary talk it knows, the seldomer it takes talk for a word. Twice each is enough.')}{' '}
        {talk.length > 0 ? <strong>{sayTalk(talk.length)}</strong> : null}
      </p>
      <ul className={css.rows}>
        {PHRASES.map((phrase) => (
          <TakeRow
            key={phrase}
            word={TALK}
            title={t(phrase)}
            saidAs={phrase}
            meaning=""
            example={null}
            takes={talk.filter(({ said }) => said === phrase)}
            wanted={TAKES_A_PHRASE}
            isNext={next === phrase}
          />
        ))}
        <li className={css.row}>
          <div>
            <strong>{t('Anything else you say')}</strong>
            <p className="soft small">
              {t('Tell the dog about your day for ten seconds, or add recordings from files, one saying each.')}
            </p>
            {other.length > 0 ? <Takes title={t('anything else you say')} takes={other} wanted={0} /> : null}
          </div>
          <TenSeconds />
        </li>
      </ul>
    </section>
  );
}

/** All of it counts, however it came in. */
function sayTalk(pieces: number): string {
  if (pieces >= ENOUGH_TALK) return t('{n} pieces of talk are kept: enough to begin with.', { n: pieces });
  return pieces === 1 ? t('1 piece of talk is kept.') : t('{n} pieces of talk are kept.', { n: pieces });
}

function TenSeconds() {
  const { teach, stopTeaching, after } = useIntents();
  const [running, setRunning] = useState(false);
  const doing = useApp(({ teaching }) => teaching.kind);
  useEffect(() => {
    if (!running) return;
    return after(1000 * TALK_S, () => {
      setRunning(false);
      void stopTeaching();
    });
  }, [running, after, stopTeaching]);
  return (
    <div className={css.actions}>
      {running ? (
        <>
          <Level />
          <LiveTrouble />
        </>
      ) : null}
      {doing === 'working' ? <p className="soft small">{t('In a moment: it works out what it was taught.')}</p> : null}
      <button
        type="button"
        disabled={running || doing !== 'idle'}
        onClick={() => void teach(TALK, TALK).then(() => setRunning(true))}
      >
        {running ? t('Talk now…') : t('Talk for ten seconds')}
      </button>
      <FromFiles word={TALK} said={TALK} names={t('anything else you say')} />
    </div>
  );
}

function Beats() {
  const { hearSound } = useIntents();
  const ready = useNext() === null;
  return (
    <section className="stack">
      <h2>{t('4 · The beats')}</h2>
      <p>
        {t(
          'A tap a second from the hold on, a double tap when it is enough: then you mark. Let your dog hear them with food first.',
        )}
      </p>
      <div className="row">
        <button type="button" onClick={() => void hearSound('beat')}>
          {t('A second')}
        </button>
        <button type="button" onClick={() => void hearSound('enough')}>
          {t('Enough')}
        </button>
        <Link href="/settings">{t('Volume, flashes instead of sounds')}</Link>
      </div>
      <Link href="/" className={ready ? 'button primary' : 'button'}>
        {ready ? t('Ready: to practice') : t('To practice')}
      </Link>
    </section>
  );
}
