/** Homework goes from a trainer's device to an owner's and sessions come back, as both meet it. */
import { expect, test } from 'vitest';
import { DEMO_DOG, DEMO_PLAN } from '../../demo/scenario.ts';
import { deskDogs, dogsOfOwners } from '../../src/core/desk/dogs.ts';
import { type Homework, practisedOf, sessionsToReturn } from '../../src/core/handover/homework.ts';
import { openedApp, settle } from './opened-app.ts';

type Opened = Awaited<ReturnType<typeof openedApp>>;

const WISH = {
  planId: DEMO_PLAN.id,
  forDog: { kind: 'new', name: 'Biscuit' },
  ...{ trainer: 'Alex', ownerName: 'Kim', words: { hold: 'chin', mark: 'yes', lifted: 'up' } },
  ...{ caution: '', sessionsAWeek: 3, note: 'After her walk.' },
} as const;

async function give({ app }: Opened, wish: Parameters<typeof app.intents.giveHomework>[0] = WISH): Promise<Homework> {
  const homework = await app.intents.giveHomework(wish);
  if (!homework) throw new Error('the plan is not here');
  return homework;
}

async function accept({ app }: Opened, homework: Homework): Promise<string> {
  const { file } = await app.intents.handOut(homework);
  const opened = await app.intents.openHomework({ text: file.text });
  if (opened.kind !== 'told') throw new Error(opened.kind);
  return (await app.intents.acceptHomework(opened.homework, { kind: 'new', name: 'Biscuit' })) ?? '';
}

async function practise({ app, press }: Opened, planId: string, fromS: number): Promise<void> {
  await app.intents.practise(planId);
  await settle();
  for (let n = 0; n < 6; n++) {
    await press('hold', fromS + 10 * n);
    await press('mark', fromS + 10 * n + 1);
  }
  await app.intents.finish();
  await settle();
}

/** Hands back what is due, as the screen does. */
async function sendBack({ app }: Opened, homeworkId: string, again = false): Promise<string> {
  const back = await app.intents.returnHomework(homeworkId, again);
  if (!back) return '';
  await app.intents.noteReturned(homeworkId, back.sessions);
  return back.file.text;
}

async function takeIn({ app }: Opened, text: string) {
  const looked = await app.intents.lookAtReturn(text);
  if (!looked.ok) throw new Error(looked.why);
  const added = await looked.offer.add();
  await settle();
  return { ...looked, added };
}

function due({ app }: Awaited<ReturnType<typeof openedApp>>, { id }: Homework): number {
  const { heads, library } = app.getState();
  return sessionsToReturn(id, practisedOf(heads, null), library.homework).length;
}

test('a trainer gives, an owner practises and sends back, the trainer answers, and nothing of either is lost', async () => {
  const [trainer, owner] = [await openedApp({ device: 'trainer' }), await openedApp({ device: 'owner' })];
  const first = await give(trainer);
  expect(first).toMatchObject({ revision: 1, dogName: 'Biscuit', ownerName: 'Kim', steps: DEMO_PLAN.steps });

  const planId = await accept(owner, first);
  expect(owner.app.getState().library.plans.at(-1)).toMatchObject({ id: planId, title: DEMO_PLAN.title });
  expect(due(owner, first)).toBe(0);
  await practise(owner, planId, 100);
  expect(due(owner, first)).toBe(1);

  const taken = await takeIn(trainer, await sendBack(owner, first.id));
  expect(taken.dogs).toEqual(['Biscuit']);
  expect(due(owner, first)).toBe(0);
  const desk = await trainer.app.intents.readDesk();
  expect(desk?.rows).toMatchObject([{ dog: { name: 'Biscuit', owner: 'Kim' }, thisWeek: 1, needs: [] }]);
  // One dog, under the trainer's record and the owner's; neither crowds the first screen.
  const { library } = trainer.app.getState();
  expect(deskDogs(library)[0]?.dogIds.size).toBe(2);
  expect(library.dogs.filter(({ id }) => !dogsOfOwners(library).has(id)).map(({ name }) => name)).toEqual([DEMO_DOG.name]);

  const given = library.homework.given[0];
  const plan = library.plans.find(({ id }) => id === given?.planId);
  if (!plan) throw new Error('the trainer lost the plan');
  await trainer.app.intents.savePlan({ ...plan, steps: plan.steps.slice(0, -1) });
  const second = await give(trainer, { ...WISH, planId: plan.id, forDog: { kind: 'known', id: plan.dogId }, sessionsAWeek: 2 });
  expect([second.id, second.revision]).toEqual([first.id, 2]);

  const { code, file } = await trainer.app.intents.handOut(second);
  // An answer given on the same day is no second file of the same name.
  const before = (await trainer.app.intents.handOut(first)).file;
  expect([before.name, file.name].map((name) => name.slice(0, 30))).toEqual([
    'stillbeat-homework-Biscuit-v1-',
    'stillbeat-homework-Biscuit-v2-',
  ]);
  const opened = await owner.app.intents.openHomework({ code: code ?? '' });
  expect(opened).toMatchObject({
    kind: 'told',
    arrival: { kind: 'newer' },
    changes: [
      { kind: 'step-removed', step: { id: DEMO_PLAN.steps.at(-1)?.id } },
      { kind: 'sessions', from: 3, to: 2 },
    ],
  });
  expect(await owner.app.intents.acceptHomework(second, { kind: 'new', name: 'never asked' })).toBe(planId);
  const owned = owner.app.getState();
  expect(owned.library.plans.find(({ id }) => id === planId)?.steps).toEqual(second.steps);
  expect(owned.heads.map(({ started }) => started.body.planId)).toEqual([planId]);
  expect(owned.library.dogs.map(({ name }) => name)).toEqual([DEMO_DOG.name, 'Biscuit']);

  await practise(owner, planId, 1000);
  const again = await takeIn(trainer, await sendBack(owner, first.id));
  expect(again.offer.fresh).toContainEqual({ what: 'session', count: 1 });
  const grown = await trainer.app.intents.readDesk();
  expect(grown?.rows).toMatchObject([{ thisWeek: 2 }]);
  // Read ahead, as the first screen does, it tells the same.
  await trainer.app.intents.readDeskAhead();
  expect(await trainer.app.intents.readDesk()).toEqual(grown);
  // A trainer who lost what came before is sent all of it; what is here already stays as it is.
  expect((await takeIn(trainer, await sendBack(owner, first.id, true))).offer.freshRecords).toBe(0);
});

test('the trainer’s plan begins next time where the owner’s does, once the sessions came back', async () => {
  const [trainer, owner] = [await openedApp({ device: 'trainer' }), await openedApp({ device: 'owner' })];
  const homework = await give(trainer);
  const planId = await accept(owner, homework);
  await practise(owner, planId, 100);
  await practise(owner, planId, 1000);
  await takeIn(trainer, await sendBack(owner, homework.id));
  trainer.clock.nowS = owner.clock.nowS;
  const [theirs, mine] = [
    await owner.app.intents.startOf(planId),
    await trainer.app.intents.startOf(trainer.app.getState().library.homework.given[0]?.planId ?? ''),
  ];
  expect(theirs?.startStepId).toBe(DEMO_PLAN.steps[2]?.id);
  expect(mine).toEqual(theirs);
  // The plan that it was copied from is another dog's: nobody practised that.
  expect((await trainer.app.intents.startOf(DEMO_PLAN.id))?.why).toEqual({ kind: 'first-session' });
});

test('a trainer who opens their own homework is told so', async () => {
  const trainer = await openedApp({ device: 'trainer' });
  const { file } = await trainer.app.intents.handOut(await give(trainer));
  expect(await trainer.app.intents.openHomework({ text: file.text })).toMatchObject({ kind: 'own' });
});

test('a damaged file keeps nothing', async () => {
  const owner = await openedApp({ device: 'owner' });
  const before = owner.app.getState().library;
  expect(await owner.app.intents.openHomework({ text: '{' })).toMatchObject({ kind: 'refused' });
  expect(owner.app.getState().library).toBe(before);
});

test('a whole copy of an owner’s device brings their sessions, and leaves my settings, my plans and my name alone', async () => {
  const [trainer, owner] = [await openedApp({ device: 'trainer' }), await openedApp({ device: 'owner' })];
  await owner.app.intents.saveDog({ ...DEMO_DOG, name: 'Not Pixel' });
  await owner.app.intents.savePlan({ ...DEMO_PLAN, title: 'Not my plan' });
  await owner.app.intents.saveNamed('handler', { id: 'me', name: 'Kim', archived: false });
  await owner.app.intents.saveSettings({ volume: 0.1 });
  await owner.practised();
  const copy = await owner.app.intents.exportAll();
  await takeIn(trainer, copy?.text ?? '');
  const { library, heads } = trainer.app.getState();
  expect(heads).toHaveLength(1);
  expect(library.dogs.map(({ name }) => name)).toEqual([DEMO_DOG.name]);
  expect(library.plans.map(({ title }) => title)).toEqual([DEMO_PLAN.title]);
  expect([library.handlers, library.settings]).toEqual([[], null]);
});

test('a dog of the desk that is deleted goes with what came back of it', async () => {
  const [trainer, owner] = [await openedApp({ device: 'trainer' }), await openedApp({ device: 'owner' })];
  const homework = await give(trainer);
  await practise(owner, await accept(owner, homework), 100);
  await takeIn(trainer, await sendBack(owner, homework.id));
  const [dog] = deskDogs(trainer.app.getState().library);
  expect(await trainer.app.intents.eraseDog(dog?.id ?? '')).toBeNull();
  const { library, heads } = trainer.app.getState();
  expect(library.dogs.map(({ name }) => name)).toEqual([DEMO_DOG.name]);
  expect([heads, library.homework.given, library.homework.received]).toEqual([[], [], []]);
});
