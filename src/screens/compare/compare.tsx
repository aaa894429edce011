/** Two sessions, weeks, places or people side by side, with the interval of their difference. */
import { useMemo, useState } from 'react';
import { Link } from 'wouter';
import { type Message, t } from '../../core/language.ts';
import type { Step } from '../../core/plan.ts';
import { compare } from '../../core/progress/compare.ts';
import type { SessionDigest } from '../../core/progress/digest.ts';
import { useApp } from '../app-context.tsx';
import { Chart } from '../progress/chart.tsx';
import { inventedDigests } from '../progress/invented.ts';
import { withNamesNow } from '../progress/named-digests.ts';
import { useWalk } from '../progress/walk.tsx';
import { BESIDE_PX, BesideAxis, BesidePlot, besideHeightPx } from './beside-chart.tsx';
import css from './compare.module.css';
import { type Heap, heapsOf, KINDS, type Kind, pairOf } from './heaps.ts';
import { useProgress } from './use-progress.ts';
import { compareSheet, findDifference, rowsOf, sayAround, sayBeside } from './words.ts';

export function CompareScreen() {
  const progress = useProgress();
  const library = useApp((state) => state.library);
  const digests = useMemo(() => progress && withNamesNow(progress.digests, library), [progress, library]);
  if (!digests) return <h1 aria-busy="true">{t('Compare')}</h1>;
  return (
    <article className={css.compare}>
      <h1>{t('Compare')}</h1>
      {heapsOf('sessions', digests).length < 2 ? <Empty /> : <OfPlan digests={digests} />}
      <p>
        <Link href="/progress">{t('All of progress')}</Link>
      </p>
    </article>
  );
}

/** One session cannot be held against itself: shows what two look like. */
function Empty() {
  const [digests] = useState(inventedDigests);
  const places = heapsOf('places', digests.slice(0, 5));
  const pair = pairOf(places, [t('garden'), t('bathroom')]);
  return (
    <>
      <section className="stack">
        <p>
          {t(
            'Two sessions with trials can be held against each other. Practise a second one, in another place or with another person.',
          )}
        </p>
        <Link href="/" className="button primary">
          {t('Practise')}
        </Link>
      </section>
      <section className="stack wide" aria-label={t('Invented, to show how it is read')}>
        <p className="soft">
          <strong>{t('Invented, to show how it is read:')}</strong> {t('A is one session in a garden, B four in a bathroom.')}
        </p>
        {pair ? <Pair pair={pair} ladder={NO_STEPS} /> : null}
      </section>
    </>
  );
}

/** One list, so that nothing is reckoned anew. */
const NO_STEPS: readonly Step[] = [];

/** Steps are a plan's own: only sessions of one plan are held against each other. */
function OfPlan({ digests }: { digests: readonly SessionDigest[] }) {
  const dogs = useApp((state) => state.library.dogs);
  const plans = plansOf(digests, (id) => dogs.find((dog) => dog.id === id)?.name);
  const [wanted, setWanted] = useState<string | null>(null);
  const planId = wanted ?? plans[0]?.[0] ?? '';
  const own = useMemo(() => digests.filter((digest) => digest.planId === planId), [digests, planId]);
  const ladder = useApp((state) => state.library.plans.find(({ id }) => id === planId)?.steps) ?? NO_STEPS;
  return (
    <>
      {plans.length > 1 ? (
        <Pick label={t('Plan')} value={planId} options={plans.map(([key, name]) => ({ key, name }))} onPick={setWanted} />
      ) : null}
      <OfKind key={planId} digests={own} ladder={ladder} />
    </>
  );
}

/** The plan practised last comes first. */
function plansOf(
  digests: readonly SessionDigest[],
  nameOfDog: (id: string) => string | undefined,
): readonly (readonly [id: string, name: string])[] {
  const newest = digests.toSorted((a, b) => b.atMs - a.atMs);
  const named = newest.map(({ planId, planTitle, dogId }) => [planId, [nameOfDog(dogId), planTitle].filter(Boolean).join(': ')]);
  // The first title of each, which is the newest.
  return [...new Map(named.toReversed() as [string, string][])].toReversed();
}

const KIND_WORDS = {
  sessions: 'two sessions',
  weeks: 'two weeks',
  places: 'two places',
  people: 'two people',
} as const satisfies Readonly<Record<Kind, Message>>;

function OfKind({ digests, ladder }: { digests: readonly SessionDigest[]; ladder: readonly Step[] }) {
  const [kind, setKind] = useState<Kind>('sessions');
  return (
    <>
      <fieldset className={css.kinds}>
        <legend className="soft small">{t('What to compare')}</legend>
        {KINDS.map((one) => (
          <label key={one} className={css.kind}>
            <input type="radio" name="kind" checked={one === kind} onChange={() => setKind(one)} />
            {t(KIND_WORDS[one])}
          </label>
        ))}
      </fieldset>
      <OfHeaps key={kind} kind={kind} heaps={heapsOf(kind, digests)} ladder={ladder} />
    </>
  );
}

const MISSING = {
  sessions: 'This plan has one session with trials so far. Practise a second one.',
  weeks: 'All sessions of this plan lie in one week so far.',
  places:
    'All sessions of this plan were in one place so far. Try an easy step in another one, and name that place before you practise.',
  people: 'One person practised this plan so far. Let somebody else try an easy step, under their own name.',
} as const satisfies Readonly<Record<Kind, Message>>;

function OfHeaps({ kind, heaps, ladder }: { kind: Kind; heaps: readonly Heap[]; ladder: readonly Step[] }) {
  const [keys, setKeys] = useState<readonly [string | null, string | null]>([null, null]);
  const pair = pairOf(heaps, keys);
  if (!pair) return <p>{t(MISSING[kind])}</p>;
  const [a, b] = pair;
  return (
    <>
      <div className={css.two}>
        <Pick label={t('A (dot)')} value={a.key} options={heaps} onPick={(key) => setKeys([key, b.key])} />
        <Pick label={t('B (diamond)')} value={b.key} options={heaps} onPick={(key) => setKeys([a.key, key])} />
      </div>
      {a.key === b.key ? (
        <p>{t('A and B are the same. Choose another for one of them.')}</p>
      ) : (
        <Pair pair={pair} ladder={ladder} />
      )}
    </>
  );
}

function Pair({ pair: [a, b], ladder }: { pair: readonly [Heap, Heap]; ladder: readonly Step[] }) {
  const ids = useMemo(() => ladder.map(({ id }) => id), [ladder]);
  const comparison = useMemo(() => compare(a.digests, b.digests, ids), [a, b, ids]);
  const rows = rowsOf(comparison);
  const [picked, setPicked] = useState<number | null>(null);
  const walk = useWalk(rows.length, picked, setPicked);
  const told = picked === null ? undefined : rows[picked];
  const finding = findDifference(comparison);
  return (
    <>
      {rows.length === 0 ? (
        <p>{finding}</p>
      ) : (
        <Chart
          title={t('Side by side')}
          finding={finding}
          reading={t(
            'A is the dot, B the diamond; their lines are the ranges that such counts fit (95 %). Under them is the difference: left of the dotted line A keeps more, right of it B does. A line that crosses it does not tell.',
          )}
          axis={<BesideAxis rows={rows} />}
          plot={<BesidePlot rows={rows} walk={walk} />}
          widthPx={BESIDE_PX.width}
          from="start"
          paper={{ plot: <BesidePlot rows={rows} />, widthPx: BESIDE_PX.width }}
          heightPx={besideHeightPx(rows.length)}
          told={told ? `${told.title}. ${sayBeside(told)}` : null}
          sheet={compareSheet(rows)}
          fileName={t('compared#the name of a file')}
        />
      )}
      <ul className={css.around}>
        {sayAround(comparison).map((sentence) => (
          <li key={sentence}>{sentence}</li>
        ))}
        <li>{t('Days, places and people differ in more than you chose. A difference is a question, not a cause.')}</li>
      </ul>
    </>
  );
}

interface PickProps {
  readonly label: string;
  readonly value: string;
  readonly options: readonly { readonly key: string; readonly name: string }[];
  readonly onPick: (key: string) => void;
}

function Pick({ label, value, options, onPick }: PickProps) {
  return (
    <label className={css.pick}>
      <span className="soft small">{label}</span>
      <select value={value} onChange={({ target }) => onPick(target.value)}>
        {options.map(({ key, name }) => (
          <option key={key} value={key}>
            {name}
          </option>
        ))}
      </select>
    </label>
  );
}
