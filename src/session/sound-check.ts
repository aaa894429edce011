/** What the sound check and the settings ask for: takes, recordings, trying out, cues, keys. */
import type { SoundName } from '../audio/names.ts';
import type { Settings, TaughtSound } from '../core/event.ts';
import { bindKey } from '../core/key-bindings.ts';
import { settingsOf } from '../core/settings.ts';
import type { Word } from '../core/word.ts';
import { hears } from '../ears/ear-state.ts';
import { readSayings, type SayingProblem, sayingProblems } from '../ears/platform-words.ts';
import { isLive } from './live.ts';
import type { Rooms } from './rooms.ts';

export async function teach(rooms: Rooms, word: string, said: string): Promise<void> {
  rooms.platformEar.close();
  await rooms.room.unlock();
  // A microphone that is refused is told beside the row; nothing is asked to be said into it.
  if (!hears(rooms.ear.ear()) && (await rooms.ear.open()) === 'blocked') return;
  rooms.teaching.catchTakes(word, said);
}

/** Leaving the sound check: the microphone is closed, and nothing that is said from now on becomes a take. */
export async function leaveSoundCheck({ teaching, ear, practice }: Rooms): Promise<void> {
  await teaching.stop();
  if (!isLive(practice.state())) ear.close();
}

export async function tryOut(rooms: Rooms): Promise<void> {
  rooms.platformEar.close();
  await rooms.room.unlock();
  const enrolled = (await rooms.teaching.current())?.enrolled;
  // It takes seconds on a phone: a word that is being taught since then goes on.
  if (!enrolled?.ok || rooms.use.getState().teaching.kind === 'catching') return;
  rooms.use.setState({ tried: [] });
  rooms.ear.listen(enrolled.model, false);
  if (!hears(rooms.ear.ear())) await rooms.ear.open();
}

export async function addRecordings(
  { room, teaching, parts }: Rooms,
  word: string,
  said: string,
  files: readonly { name: string; bytes: ArrayBuffer }[],
): Promise<readonly string[]> {
  const refused: string[] = [];
  for (const { name, bytes } of files) {
    const recording = await parts.decode(room.context(), bytes);
    if (recording) await teaching.addRecording(word, said, recording);
    else refused.push(name);
  }
  await teaching.refresh();
  return refused;
}

export async function forget({ teaching }: Rooms, eventId: string): Promise<void> {
  await teaching.remove(eventId);
  await teaching.refresh();
}

export async function teachAgain({ teaching, keeper }: Rooms, take: TaughtSound): Promise<void> {
  const { word, handler, said, sampleRateHz, samples } = take;
  await keeper.keep({ type: 'sound-taught', body: { word, handler, said, sampleRateHz, samples } });
  await teaching.refresh();
}

export async function hearSound({ room }: Rooms, name: SoundName): Promise<void> {
  await room.unlock();
  room.preview(name);
}

export function bind(rooms: Rooms, key: string, word: Word): Promise<void> {
  return saveSettings(rooms, { keys: bindKey(settingsOf(rooms.keeper.library()).keys, key, word) });
}

export async function saveSettings(rooms: Rooms, settings: Partial<Settings>): Promise<void> {
  // It reads what is allowed when it is opened: a change must not leave it running on the old word.
  if (settings.platformEar) rooms.platformEar.close();
  await rooms.keeper.keep({ type: 'settings-saved', body: { ...settingsOf(rooms.keeper.library()), ...settings } });
  applySettings(rooms);
  // Another handler has other words.
  if (settings.handler !== undefined) await rooms.teaching.refresh();
}

export function applySettings({ room, keeper }: Rooms): void {
  const { volume, mode, speakCalls } = settingsOf(keeper.library());
  room.setVolume(volume);
  room.setMode(mode);
  room.calls.setSpoken(speakCalls);
}

/** What was typed for each word of the browser's recogniser, read and held against each other. */
export function checkSayings(typed: Readonly<Record<string, string>>): {
  sayings: Readonly<Record<string, readonly string[]>>;
  problems: readonly SayingProblem[];
} {
  const sayings = Object.fromEntries(Object.entries(typed).map(([word, text]) => [word, readSayings(text)]));
  return { sayings, problems: sayingProblems(sayings) };
}
