/** A handler takes their words to another device: as one file, looked at before it is added, merged by id, all or nothing. */
import { expect, test } from 'vitest';
import { openedApp, settle } from './opened-app.ts';

const take = (value: number) => ({
  caught: {
    samples: Float32Array.from({ length: 20 }, () => value),
    sampleRateHz: 16_000,
    startedAtS: 0,
    endedAtS: 1,
    cut: false,
  },
  report: {
    ...{ levelDb: -20, noiseDb: -60, clippedShare: 0, speechStartsAtS: 0, speechEndsAtS: 1, speechLengthS: 1 },
    ...{ faults: [], isClick: false },
  },
});

async function device(name: string) {
  const all = await openedApp({ device: name });
  const { app, ears } = all;
  const teach = async (word: string, count: number) => {
    await app.intents.teach(word, word);
    for (let n = 0; n < count; n++) {
      ears()?.onCaught(take(n / 100));
      await settle();
    }
    await app.intents.stopTeaching();
  };
  const sounds = () => app.getState().library.sounds.map(({ id, word, handler }) => `${handler} ${word} ${id}`);
  return { ...all, intents: app.intents, teach, sounds };
}

async function savedWords() {
  const phone = await device('phone');
  await phone.intents.saveSettings({ handler: 'Noor', volume: 0.3 });
  await phone.teach('hold', 3);
  await phone.teach('talk', 2);
  await phone.intents.saveSettings({ handler: 'Ilse' });
  await phone.teach('mark', 1);
  await phone.intents.saveSettings({ handler: 'Noor' });
  const file = await phone.intents.exportWords();
  if (!file) throw new Error('nothing was saved');
  return { phone, file };
}

async function looked(on: Awaited<ReturnType<typeof device>>, text: string) {
  const found = await on.intents.lookAtWords(text);
  if (!found.ok) throw new Error(found.why);
  return found.offer;
}

test('the file holds one handler’s takes and talk, and nothing of anybody else', async () => {
  const { file } = await savedWords();
  expect(file.name).toMatch(/^stillbeat-words-Noor-.*\.json$/);
  const { format, version, words, events } = JSON.parse(file.text);
  expect({ format, version, handler: words.handler }).toEqual({ format: 'stillbeat events', version: 1, handler: 'Noor' });
  expect(
    events.map(({ type, body }: { type: string; body: { handler: string; word: string } }) => [type, body.handler, body.word]),
  ).toEqual(['hold', 'hold', 'hold', 'talk', 'talk'].map((word) => ['sound-taught', 'Noor', word]));
});

test('another device sees what is new before anything is kept, then has the same takes and listens to them', async () => {
  const { phone, file } = await savedWords();
  const tablet = await device('tablet');
  const offer = await looked(tablet, file.text);
  expect(offer).toMatchObject({ name: 'Noor', freshTakes: 5, known: 0, forgotten: 0, refused: [], others: 0 });
  expect(offer.fresh).toEqual([
    { word: 'hold', takes: 3, learned: 0 },
    { word: 'talk', takes: 2, learned: 0 },
  ]);
  expect(tablet.sounds()).toEqual([]);
  expect(await offer.add(false)).toEqual({ ok: true });
  expect(tablet.sounds()).toEqual(phone.sounds().filter((sound) => sound.startsWith('Noor')));
  expect(tablet.app.getState().library.settings).toMatchObject({ handler: 'Noor', volume: 0.8 });
  const again = await looked(tablet, file.text);
  expect(again).toMatchObject({ freshTakes: 0, known: 5, others: 0 });
});

test('keys and cues come along only when asked for', async () => {
  const { file } = await savedWords();
  const tablet = await device('tablet');
  await (await looked(tablet, file.text)).add(true);
  expect(tablet.app.getState().library.settings).toMatchObject({ handler: 'Noor', volume: 0.3, place: 'at home' });
});

test('takes that were forgotten here stay forgotten; takes of the same name that are here are told', async () => {
  const { phone, file } = await savedWords();
  const first = phone.app.getState().library.sounds[0];
  await phone.intents.forget(first?.id ?? '');
  expect(await looked(phone, file.text)).toMatchObject({ freshTakes: 0, known: 5, forgotten: 1, others: 0 });
  const tablet = await device('tablet');
  await tablet.intents.saveSettings({ handler: 'Noor' });
  await tablet.teach('hold', 2);
  expect(await looked(tablet, file.text)).toMatchObject({ freshTakes: 5, others: 2 });
});

test('a take that cannot be used and a record that is no take are refused by name, the others are offered', async () => {
  const { file } = await savedWords();
  const document = JSON.parse(file.text);
  document.events[0].body.samples = 'no base64!';
  document.events[1].body.handler = 'Ilse';
  const offer = await looked(await device('tablet'), JSON.stringify(document));
  expect(offer.freshTakes).toBe(3);
  expect(offer.refused).toHaveLength(2);
  expect(offer.refused[0]).toMatch(/samples: expected 16-bit samples/);
  expect(offer.refused[1]).toMatch(/expected a take of Noor, got sound-taught/);
});

test('what is no file of words is refused whole, and says what to do', async () => {
  const { phone } = await savedWords();
  const tablet = await device('tablet');
  const backup = await phone.intents.exportAll();
  expect(await tablet.intents.lookAtWords(backup?.text ?? '')).toMatchObject({
    ok: false,
    why: expect.stringContaining('settings'),
  });
  for (const text of ['', 'null', '{"format":"stillbeat events","version":2,"events":[]}'])
    expect(await tablet.intents.lookAtWords(text)).toMatchObject({ ok: false });
  expect(tablet.sounds()).toEqual([]);
});

test('a take that is here under the same name with other content is left as it is, both of them', async () => {
  const { phone, file } = await savedWords();
  const document = JSON.parse(file.text);
  document.events[0].body.said = 'something else';
  const offer = await looked(phone, JSON.stringify(document));
  expect(offer).toMatchObject({ freshTakes: 0, known: 4 });
  expect(offer.refused[0]).toMatch(/here already with other content/);
});
