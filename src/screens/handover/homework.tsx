/** The owner's homework: what was accepted, how often it was practised, what changed, and sending sessions back. */
import { type ChangeEvent, useState } from 'react';
import { Link, useLocation } from 'wouter';
import { homeworkChanges } from '../../core/handover/changes.ts';
import { HOMEWORK_WORDS, type HomeworkReceived, homeworkHere, plansOf } from '../../core/handover/homework.ts';
import { t } from '../../core/language.ts';
import type { Intents } from '../../session/app.ts';
import { useApp, useIntents } from '../app-context.tsx';
import { sayDay } from '../parts/when.ts';
import { Arrived } from './arrived.tsx';
import css from './handover.module.css';
import { SendBack } from './send-back.tsx';
import { FromTrainer, Told } from './told.tsx';
import { useToReturn } from './use-to-return.ts';
import { sayASessionsAWeek, sayChange, sayFrom, wordMeaning } from './words.ts';

type Opened = Awaited<ReturnType<Intents['openHomework']>>;

/** @param planId what was practised on it is to be sent back: it comes first. */
export function HomeworkScreen({ planId }: { planId?: string }) {
  const { openHomework } = useIntents();
  const book = useApp((state) => state.library.homework);
  const [opened, setOpened] = useState<Opened | null>(null);
  const [accepted, setAccepted] = useState<string | null>(null);
  const mine = homeworkHere(book);
  const wanted = accepted ?? planId ?? null;
  // Accepted on two devices, one homework is two plans.
  const isMeant: IsMeant = ({ homework }) => wanted !== null && plansOf(homework.id, book.received).has(wanted);
  const look = async (event: ChangeEvent<HTMLInputElement>) => {
    const input = event.currentTarget;
    const [file] = input.files ?? [];
    if (!file) return;
    setOpened(await openHomework({ text: await file.text() }));
    // The same file can be chosen again after it was changed.
    input.value = '';
  };
  if (opened)
    return (
      <Arrived
        opened={opened}
        onLeave={() => setOpened(null)}
        onAccepted={(planId) => {
          setAccepted(planId);
          setOpened(null);
        }}
      />
    );
  return (
    <div className="stack wide">
      <header className="stack">
        <h1>{t('Homework')}</h1>
        <p>
          {mine.length > 0
            ? t('Practise as your trainer asked, then send your sessions back.')
            : t(
                'A trainer sends you a plan as a file or as a code. Point your phone’s camera at the code, or open the file here.',
              )}
        </p>
        <p role="status">{accepted === null ? '' : t('Accepted. It is the first in this list, and on the first screen.')}</p>
      </header>
      {mine.length > 0 ? (
        <ul className={css.list}>
          {firstOf(mine, isMeant).map((received) => (
            <Item key={received.homework.id} received={received} toSend={planId !== undefined && isMeant(received)} />
          ))}
        </ul>
      ) : null}
      <label className="stack">
        {t('Open homework from a file')}
        <input type="file" accept="application/json,.json" onChange={(event) => void look(event)} />
      </label>
      <Link href="/desk">{t('Are you the trainer? To the desk')}</Link>
    </div>
  );
}

type IsMeant = (received: HomeworkReceived) => boolean;

function firstOf(mine: readonly HomeworkReceived[], isMeant: IsMeant): readonly HomeworkReceived[] {
  return mine.toSorted((a, b) => Number(isMeant(b)) - Number(isMeant(a)));
}

const DAY_MS = 86_400_000;

/** @param toSend the owner came to send it back. */
function Item({ received, toSend }: { received: HomeworkReceived; toSend: boolean }) {
  const { homework, dogId, planId } = received;
  const dog = useApp((state) => state.library.dogs).find(({ id }) => id === dogId);
  const heads = useApp((state) => state.heads);
  const due = useToReturn([received]).length;
  const { practise } = useIntents();
  const [, go] = useLocation();
  const sinceMs = Date.now() - 7 * DAY_MS;
  const thisWeek = heads.filter(({ started }) => started.body.planId === planId && Date.parse(started.at) > sinceMs).length;
  return (
    <li className={css.item}>
      <h2>
        {homework.title} · {dog?.name ?? homework.dogName}
      </h2>
      <p>
        {sayFrom(homework)}, {sayDay(homework.givenAt)}. {sayASessionsAWeek(homework.sessionsAWeek)};{' '}
        {thisWeek === 1 ? t('1 in the latest seven days.') : t('{n} in the latest seven days.', { n: thisWeek })}
      </p>
      {homework.note || homework.caution ? (
        <dl className={css.facts}>
          <FromTrainer homework={homework} />
        </dl>
      ) : null}
      <WordsToTeach homework={homework} />
      <div className="row">
        <button
          type="button"
          className={toSend && due > 0 ? undefined : 'primary'}
          onClick={() => void practise(planId).then((begun) => begun && go('/practice'))}
        >
          {t('Practise')}
        </button>
        <Link href={`/plan/${encodeURIComponent(planId)}`} className="button">
          {t('The plan')}
        </Link>
        <Link href={`/sheet/${encodeURIComponent(homework.id)}`} className="button">
          {t('A sheet of paper')}
        </Link>
      </div>
      <Changed received={received} />
      <details>
        <summary>{t('Read it again')}</summary>
        <Told homework={homework} under={2} />
      </details>
      <SendBack homework={homework} due={due} isAskedFor={toSend} />
    </li>
  );
}

function WordsToTeach({ homework: { words } }: Pick<HomeworkReceived, 'homework'>) {
  const said = HOMEWORK_WORDS.filter((word) => words[word] !== '').map((word) => `“${words[word]}” (${wordMeaning(word)})`);
  if (said.length === 0) return null;
  return (
    <p>
      {t('Say: {words}.', { words: said.join(', ') })} <Link href="/sound">{t('Teach the app these words')}</Link>
    </p>
  );
}

/** What the latest version changed against the one before, as far as that one is here. */
function Changed({ received: { homework } }: { received: HomeworkReceived }) {
  const all = useApp((state) => state.library.homework.received);
  const before = all
    .filter((each) => each.homework.id === homework.id && each.homework.revision < homework.revision)
    .toSorted((a, b) => b.homework.revision - a.homework.revision)[0]?.homework;
  if (!before) return null;
  const changes = homeworkChanges(before, before, homework);
  if (changes.length === 0) return null;
  return (
    <details>
      <summary>{t('What is new since version {n}', { n: before.revision })}</summary>
      <ul className={css.changes}>
        {changes.map((change, nth) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: two changes may say the same; their order never changes.
          <li key={nth}>{sayChange(change)}</li>
        ))}
      </ul>
    </details>
  );
}
