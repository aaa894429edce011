/** The homework as a sheet of paper: what to do, what to mind, and a row of boxes for each step. Made to be printed, on A4 or Letter. */
import { type ReactNode, useEffect, useState } from 'react';
import { Link } from 'wouter';
import { HOMEWORK_WORDS, type Homework, latestSent } from '../../core/handover/homework.ts';
import { t } from '../../core/language.ts';
import { ruleOf, sayRule } from '../../core/rule.ts';
import { useApp, useIntents } from '../app-context.tsx';
import { sayDay } from '../parts/when.ts';
import { addressOf, isOnlyHere } from './address.ts';
import { CodePicture } from './code.tsx';
import { modulesOf } from './qr-modules.ts';
import css from './sheet.module.css';
import { sayASessionsAWeek, sayCaution, sayStep, wordMeaning } from './words.ts';

export function SheetScreen({ homeworkId }: { homeworkId: string }) {
  const { given, received } = useApp((state) => state.library.homework);
  const homework = latestSent([...given, ...received], homeworkId)?.homework;
  if (!homework)
    return (
      <div className="stack">
        <h1>{t('This homework is not on this device')}</h1>
        <Link href="/homework">{t('All homework')}</Link>
      </div>
    );
  return (
    <div className="stack wide">
      <div className={css.tools}>
        <button type="button" className="primary" onClick={() => print()}>
          {t('Print')}
        </button>
        <p className="soft">{t('On A4 or Letter, as your printer is set.')}</p>
      </div>
      <Sheet homework={homework} />
    </div>
  );
}

function Sheet({ homework }: { homework: Homework }) {
  const { caution, dogName, note, ownerName, position, revision, rule, sessionsAWeek, steps, title, trainer, givenAt } = homework;
  return (
    <article className={css.sheet}>
      <header className={css.head}>
        <div>
          <h1>{title}</h1>
          <p>
            {[dogName, ownerName, trainer && t('from {trainer}', { trainer }), sayDay(givenAt), t('version {n}', { n: revision })]
              .filter(Boolean)
              .join(' · ')}
          </p>
        </div>
        <SheetCode homework={homework} />
      </header>
      <dl className={css.facts}>
        <Fact name={t('Position')}>{position}</Fact>
        <Fact name={t('How often')}>{sayASessionsAWeek(sessionsAWeek)}</Fact>
        <Fact name={t('Words to use')}>
          {HOMEWORK_WORDS.map((word) => `${wordMeaning(word)}: ${homework.words[word] || '__________'}`).join(' · ')}
        </Fact>
        <Fact name={t('How a step is earned')}>{sayRule(ruleOf(rule))}</Fact>
        {note ? <Fact name={t('From your trainer')}>{note}</Fact> : null}
        {caution ? (
          <Fact name={t('What to mind')} look={css.caution}>
            {caution}
          </Fact>
        ) : null}
      </dl>
      <p className={css.stop}>
        {t(
          'A head that lifts is information, never disobedience: stop, and make the step smaller; never hold the head down. A dog that begins to refuse a touch it gave before may be in pain: stop handling there and ask your veterinarian. Keep your face away from the dog’s face.',
        )}
      </p>
      <Boxes steps={steps} />
    </article>
  );
}

function Fact({ name, look = '', children }: { name: string; look?: string | undefined; children: ReactNode }) {
  return (
    <>
      <dt>{name}</dt>
      <dd className={`pre ${look}`}>{children}</dd>
    </>
  );
}

/** Nine of ten earn a step: ten boxes a row. */
const BOXES = 10;

function Boxes({ steps }: Pick<Homework, 'steps'>) {
  return (
    <table className={css.steps}>
      <thead>
        <tr>
          <th scope="col">{t('Step')}</th>
          <th scope="col">{t('A tick: kept. A cross: lifted.')}</th>
        </tr>
      </thead>
      <tbody>
        {steps.map((step, nth) => (
          <tr key={step.id}>
            <td>
              <strong>
                {nth + 1}. {step.title}
              </strong>
              <span className={css.what}>{sayStep(step)}</span>
              {step.caution ? <span className={css.minds}>{sayCaution(steps, nth)}</span> : null}
            </td>
            <td>
              <span className={css.boxes} aria-hidden="true">
                {Array.from({ length: BOXES }, (_, box) => (
                  // biome-ignore lint/suspicious/noArrayIndexKey: empty boxes are all alike.
                  <span key={box} className={css.box} />
                ))}
              </span>
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

/** Only where the address leads anywhere, and where it is small enough to be read from paper. */
function SheetCode({ homework }: { homework: Homework }) {
  const { handOut } = useIntents();
  const [code, setCode] = useState<string | null>(null);
  useEffect(() => {
    let here = true;
    void handOut(homework).then((handed) => here && setCode(handed.code));
    return () => {
      here = false;
    };
  }, [homework, handOut]);
  const modules = code === null || isOnlyHere() ? null : modulesOf(addressOf(), code);
  if (!modules) return null;
  return (
    <div className={css.code}>
      <CodePicture modules={modules} label={t('QR code of the homework for {dog}', { dog: homework.dogName })} />
    </div>
  );
}
