/** A session is put right in the review, and the ear learns from it. The ear is the real one, on cepstra; the words are made by code. */
import { expect, test } from 'vitest';
import { DEMO_PLAN } from '../../demo/scenario.ts';
import { enrol, inspectTake } from '../../src/hearing/enrol.ts';
import { compareModels } from '../../src/hearing/learn.ts';
import { createListener, type Hearing } from '../../src/hearing/listen.ts';
import { type GlideName, room, say } from '../hearing/sounds.ts';
import { openedApp, settle } from './opened-app.ts';

const TAUGHT: readonly GlideName[] = ['hold', 'mark', 'lifted'];
const takesOf = (name: GlideName) => [1, 2, 3].map((seed) => ({ samples: say(name, seed), sampleRateHz: 16_000 }));
const teaching = { words: Object.fromEntries(TAUGHT.map((name) => [name, takesOf(name)])), talk: [] };

/** What the ear makes of a track. */
function hearings(track: Float32Array, sound = false): readonly Hearing[] {
  const enrolled = enrol(teaching);
  if (!enrolled.ok) throw new Error('made words can be taught');
  const listener = createListener(enrolled.model, { sampleRateHz: 16_000, keep: { sound } });
  const heard: Hearing[] = [];
  for (let at = 0; at < track.length; at += 320) heard.push(...listener.push(track.subarray(at, at + 320)));
  return [...heard, ...listener.flush()];
}

const WORDS = [
  { name: 'hold', atS: 1, seed: 31 },
  { name: 'mark', atS: 3, seed: 32 },
  { name: 'hold', atS: 5, seed: 34 },
  { name: 'lifted', atS: 7.2, seed: 35 },
] as const;
const CHATTER = (['good', 'come', 'name'] as const).flatMap((name, i) =>
  [0, 1, 2, 3, 4].map((n) => ({ name, atS: 10 + 1.4 * (5 * i + n), seed: 200 + 10 * i + n })),
);
/** The three words said rightly, then chatter that an ear without talk takes for words. */
const HEARD = hearings(room(34, [...WORDS, ...CHATTER]));

async function taughtApp(heard = HEARD) {
  const all = await openedApp({
    enrol: (given) => enrol(given),
    compare: ({ before, after, known }) => compareModels(before, after, known),
  });
  const { app, ears, clock } = all;
  for (const name of TAUGHT) {
    await app.intents.teach(name, name);
    for (const take of takesOf(name)) {
      const caught = { ...take, startedAtS: 0, endedAtS: 1, cut: false };
      ears()?.onCaught({ caught, report: { ...inspectTake(take), faults: [] } });
      await settle();
    }
    await app.intents.stopTeaching();
  }
  await app.intents.practise(DEMO_PLAN.id);
  await settle();
  for (const hearing of heard) {
    const by = 60;
    const { startedAtS, endedAtS, decidedAtS } = hearing;
    clock.nowS = by + decidedAtS;
    ears()?.onHearing({ ...hearing, startedAtS: by + startedAtS, endedAtS: by + endedAtS, decidedAtS: by + decidedAtS });
    await settle();
  }
  await app.intents.finish();
  await settle();
  const session = app.getState().reviewed?.sessionId ?? '';
  await app.intents.openReview(session);
  const reviewed = () => {
    const state = app.getState().reviewed;
    if (!state) throw new Error('no session is reviewed');
    return state.session;
  };
  return { ...all, intents: app.intents, reviewed, learned: () => app.getState().library.learned };
}

test('false triggers and doubts that are put right make talk of themselves, and the session says what that changes', async () => {
  const { app, intents, reviewed, learned } = await taughtApp();
  const wrong = reviewed().hearings.filter((each) => each.startedAtS > 18);
  expect(wrong.filter(({ was }) => was !== 'unsure').length).toBeGreaterThan(1);
  expect(await intents.lookAtLesson()).toEqual({ toLearn: 0, learned: 0, without: 0, ofAnother: null });
  for (const { id } of wrong) expect(await intents.correct({ do: 'relabel', of: id, as: null })).toBeNull();
  expect(await intents.lookAtLesson()).toMatchObject({ toLearn: wrong.length, learned: 0 });

  const change = await intents.learn();
  expect(learned().map(({ word, of }) => [word, of])).toEqual(wrong.map(({ id }) => ['talk', id]));
  expect(change).toMatchObject({ lost: 0 });
  // The forecast rests on them as on any other talk.
  expect(app.getState().taught?.talk).toBe(wrong.length);
  expect(change?.falseAfter).toBeLessThan(change?.falseBefore ?? 0);
  expect(await intents.lookAtLesson()).toMatchObject({ toLearn: 0, learned: wrong.length });
});

test('learning twice from the same corrections teaches nothing twice', async () => {
  const { intents, reviewed, learned } = await taughtApp();
  const [first] = reviewed().hearings;
  await intents.correct({ do: 'confirm', of: first?.id ?? '' });
  await intents.learn();
  await intents.learn();
  expect(learned().map(({ word }) => word)).toEqual(['hold']);
});

test('another word is a take of that word, and changing one’s mind changes what was learnt', async () => {
  const { intents, reviewed, learned } = await taughtApp();
  const id = reviewed().hearings[1]?.id ?? '';
  await intents.correct({ do: 'relabel', of: id, as: 'lifted' });
  await intents.learn();
  expect(learned().map(({ word }) => word)).toEqual(['lifted']);
  await intents.correct({ do: 'relabel', of: id, as: 'mark' });
  await intents.learn();
  expect(learned().map(({ word }) => word)).toEqual(['mark']);
  await intents.undoCorrection();
  await intents.undoCorrection();
  expect(await intents.lookAtLesson()).toMatchObject({ toLearn: 1 });
  await intents.learn();
  expect(learned()).toEqual([]);
});

test('there is a way back: the ear forgets what the session taught, the corrections stand', async () => {
  const { intents, reviewed, learned } = await taughtApp();
  await intents.correct({ do: 'confirm', of: reviewed().hearings[0]?.id ?? '' });
  await intents.learn();
  expect(learned()).toHaveLength(1);
  await intents.unlearn();
  expect(learned()).toEqual([]);
  expect(reviewed().corrections).toBe(1);
  expect(await intents.lookAtLesson()).toMatchObject({ toLearn: 1, learned: 0 });
});

test('a word by key, and one that was heard more than a month ago, cannot teach; it says so', async () => {
  const { intents, reviewed, store, clock } = await taughtApp();
  await intents.correct({ do: 'confirm', of: reviewed().hearings[0]?.id ?? '' });
  await store.forgetHeardBefore(Date.UTC(2026, 2, 2, 17) + 1000 * clock.nowS + 1);
  expect(await intents.lookAtLesson()).toMatchObject({ toLearn: 0, without: 1 });
});

test('a session of another handler teaches nobody else’s ear', async () => {
  const { intents, reviewed, learned } = await taughtApp();
  await intents.correct({ do: 'confirm', of: reviewed().hearings[0]?.id ?? '' });
  await intents.saveSettings({ handler: 'Ilse' });
  expect(await intents.lookAtLesson()).toMatchObject({ ofAnother: 'me' });
  expect(await intents.learn()).toBeNull();
  expect(learned()).toEqual([]);
});

test('sounds are kept only where they come with a word, and go by one button; what can be learnt stays', async () => {
  const { intents, reviewed } = await taughtApp(hearings(room(9, WORDS), true));
  const id = reviewed().hearings[0]?.id ?? '';
  expect(await intents.countSounds()).toBe(4);
  expect(await intents.hasHeardSound(id)).toBe(true);
  expect(await intents.forgetSounds()).toBe(true);
  expect(await intents.hasHeardSound(id)).toBe(false);
  await intents.correct({ do: 'confirm', of: id });
  expect(await intents.lookAtLesson()).toMatchObject({ toLearn: 1 });
});
