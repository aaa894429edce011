/** The frame around the screens: which one is shown, the bar to the others, and what must be said on every one. */
import { type ReactNode, useEffect, useLayoutEffect, useRef } from 'react';
import { Link, Route, Router, Switch, useLocation } from 'wouter';
import { useHashLocation } from 'wouter/use-hash-location';
import { t } from '../core/language.ts';
import type { App } from '../session/app.ts';
import { AppProvider, useApp } from './app-context.tsx';
import { leaveFirstWords } from './home/first-words.ts';
import { Home } from './home/home.tsx';
import './look/theme.css';
import './look/base.css';
import { Notices } from './notices.tsx';
import { fetched } from './parts/fetched.tsx';
import { Rescue } from './rescue.tsx';
import css from './rooms.module.css';

// What the first rep does not need is fetched when it is asked for; all of it is kept for use without a network.
const CardScreen = fetched(() => import('./card/card.tsx').then(({ CardScreen }) => CardScreen));
const CompareScreen = fetched(() => import('./compare/compare.tsx').then(({ CompareScreen }) => CompareScreen));
const DeskDogScreen = fetched(() => import('./desk/desk-dog.tsx').then(({ DeskDogScreen }) => DeskDogScreen));
const DeskScreen = fetched(() => import('./desk/desk.tsx').then(({ DeskScreen }) => DeskScreen));
const DogScreen = fetched(() => import('./dogs/dog.tsx').then(({ DogScreen }) => DogScreen));
const DogsScreen = fetched(() => import('./dogs/dogs.tsx').then(({ DogsScreen }) => DogsScreen));
const ExamScreen = fetched(() => import('./exam/exam.tsx').then(({ ExamScreen }) => ExamScreen));
const GiveScreen = fetched(() => import('./handover/give.tsx').then(({ GiveScreen }) => GiveScreen));
const HomeworkScreen = fetched(() => import('./handover/homework.tsx').then(({ HomeworkScreen }) => HomeworkScreen));
const ObserveScreen = fetched(() => import('./observe/observe.tsx').then(({ ObserveScreen }) => ObserveScreen));
const OpenScreen = fetched(() => import('./handover/open.tsx').then(({ OpenScreen }) => OpenScreen));
const PlanScreen = fetched(() => import('./plan/plan.tsx').then(({ PlanScreen }) => PlanScreen));
const Practice = fetched(() => import('./practice/practice.tsx').then(({ Practice }) => Practice));
const ProgressScreen = fetched(() => import('./progress/progress.tsx').then(({ ProgressScreen }) => ProgressScreen));
const ReviewList = fetched(() => import('./review-list/review-list.tsx').then(({ ReviewList }) => ReviewList));
const ReviewRoom = fetched(() => import('./review-list/review-room.tsx').then(({ ReviewRoom }) => ReviewRoom));
const SettingsScreen = fetched(() => import('./settings/settings.tsx').then(({ SettingsScreen }) => SettingsScreen));
const SheetScreen = fetched(() => import('./handover/sheet.tsx').then(({ SheetScreen }) => SheetScreen));
const SoundCheck = fetched(() => import('./sound-check/sound-check.tsx').then(({ SoundCheck }) => SoundCheck));
const SyncScreen = fetched(() => import('./sync/sync.tsx').then(({ SyncScreen }) => SyncScreen));

export function Rooms({ app }: { app: App }) {
  return (
    <AppProvider value={app}>
      <Router hook={useHashLocation}>
        <Frame />
      </Router>
    </AppProvider>
  );
}

function Frame() {
  const opening = useApp((state) => state.opening);
  const language = useApp((state) => state.language);
  const fresh = useApp((state) => state.heads.length === 0);
  useLayoutEffect(() => {
    if (opening.kind !== 'opening') leaveFirstWords(fresh ? language : 'none');
  }, [opening, fresh, language]);
  switch (opening.kind) {
    case 'opening':
      return <main className={css.alone} aria-busy="true" />;
    case 'another-tab':
      return (
        <Alone title={t('Stillbeat is open in another tab')}>
          {t('One tab writes, so that no rep is written twice. Go on there, or close it and load this page again.')}
        </Alone>
      );
    case 'no-web-audio':
      return (
        <Alone title={t('This browser has no sound for pages')}>
          {t('Stillbeat needs it for the beats and the microphone. Use a current Chrome, Edge, Firefox or Safari.')}
        </Alone>
      );
    case 'failed':
      return (
        <Alone title={t('Stillbeat could not open')}>
          {t('{what}. Nothing was changed or deleted. Load the page again; if that does not help, restart the browser.', {
            what: opening.what,
          })}
        </Alone>
      );
    case 'ready':
      return (
        <Rescue key={language}>
          <Screens />
        </Rescue>
      );
  }
}

function Alone({ title, children }: { title: string; children: ReactNode }) {
  return (
    <main className={css.alone}>
      <h1>{title}</h1>
      <p>{children}</p>
    </main>
  );
}

function Screens() {
  const [path] = useLocation();
  const practising = path.startsWith('/practice');
  return (
    <div className={practising ? css.bare : css.frame}>
      <Notices />
      <main className={css.main}>
        <Arrival key={path} />
        <Switch>
          <Route path="/card/:id">{({ id }) => <CardScreen dogId={decodeURIComponent(id)} />}</Route>
          <Route path="/compare" component={CompareScreen} />
          <Route path="/exam/:id">{({ id }) => <ExamScreen dogId={decodeURIComponent(id)} />}</Route>
          <Route path="/practice" component={Practice} />
          <Route path="/review" component={ReviewList} />
          <Route path="/review/:id">{({ id }) => <ReviewRoom sessionId={decodeURIComponent(id)} />}</Route>
          <Route path="/observe/:id">{({ id }) => <ObserveScreen sessionId={decodeURIComponent(id)} />}</Route>
          <Route path="/dogs" component={DogsScreen} />
          <Route path="/dogs/:id">{({ id }) => <DogScreen dogId={decodeURIComponent(id)} />}</Route>
          <Route path="/plan/:id">{({ id }) => <PlanScreen planId={decodeURIComponent(id)} />}</Route>
          <Route path="/progress">{() => <ProgressScreen />}</Route>
          <Route path="/progress/:dogId">{({ dogId }) => <ProgressScreen dogId={decodeURIComponent(dogId)} />}</Route>
          <Route path="/desk" component={DeskScreen} />
          <Route path="/desk/:dogId">{({ dogId }) => <DeskDogScreen dogId={decodeURIComponent(dogId)} />}</Route>
          <Route path="/give/:id">{({ id }) => <GiveScreen planId={decodeURIComponent(id)} />}</Route>
          <Route path="/homework">{() => <HomeworkScreen />}</Route>
          <Route path="/homework/of/:id">{({ id }) => <HomeworkScreen planId={decodeURIComponent(id)} />}</Route>
          <Route path="/homework/:code">{({ code }) => <OpenScreen code={code} />}</Route>
          <Route path="/sheet/:id">{({ id }) => <SheetScreen homeworkId={decodeURIComponent(id)} />}</Route>
          <Route path="/sound" component={SoundCheck} />
          <Route path="/settings" component={SettingsScreen} />
          <Route path="/sync" component={SyncScreen} />
          <Route component={Home} />
        </Switch>
      </main>
      {practising ? null : <Bar path={path} />}
    </div>
  );
}

/** A new screen begins at its top, for the eye and for a screen reader. Not the first one: nobody went there. */
function Arrival() {
  const mark = useRef<HTMLSpanElement>(null);
  useEffect(() => {
    if (arrivals++ === 0) return;
    scrollTo(0, 0);
    mark.current?.focus({ preventScroll: true });
  }, []);
  return <span ref={mark} tabIndex={-1} className={css.arrival} />;
}
let arrivals = 0;

// The sound check is done once and then seldom: home and settings lead to it.
const PLACES = [
  ['/', 'Dogs'],
  ['/review', 'Review'],
  ['/progress', 'Progress'],
  ['/settings', 'Settings'],
] as const;

function Bar({ path }: { path: string }) {
  const under = (...places: readonly string[]) => places.some((place) => path.startsWith(place));
  const here = (to: string) => {
    if (to === '/') return path === '/' || under('/plan', '/dogs', '/homework', '/desk', '/give', '/sheet', '/card', '/exam');
    if (to === '/progress') return under('/progress', '/compare');
    if (to === '/settings') return under('/settings', '/sync');
    return to === '/review' ? under('/review', '/observe') : under(to);
  };
  return (
    <nav className={css.bar} aria-label={t('Places')}>
      {PLACES.map(([to, name]) => (
        <Link key={to} href={to} className={css.place} aria-current={here(to) ? 'page' : undefined}>
          {t(name)}
        </Link>
      ))}
    </nav>
  );
}
