/** Turns a handler's takes and ordinary talk into a model, and says what can be expected of it. */
import { calibrate, type Ground, rehearse } from './calibrate.ts';
import { cleanerOf } from './clean.ts';
import { clickOf } from './click.ts';
import { type Sorted, sortClicks } from './click-words.ts';
import { type Feature, fitNormaliser, type Normaliser, normalise } from './feature.ts';
import { createCepstraFeature } from './feature-cepstra.ts';
import { createFusedFeature } from './feature-fused.ts';
import { forecastOf, type WordForecast } from './forecast.ts';
import { type Learned, newestOf } from './learn.ts';
import { mean } from './mean.ts';
import type { Model, OwnedTemplate } from './model.ts';
import { createNetwork, type Network } from './network.ts';
import { voiceOf } from './pitch.ts';
import type { Owner } from './score.ts';
import { unpack } from './stretch.ts';
import { survives } from './survives.ts';
import { type CutTake, cutTake, type Take, type TakeFault, type TakeReport } from './take.ts';
import {
  asItComes,
  type Clean,
  DROWNED_ROOM_DB,
  END_LAG_S,
  LOUD_ROOMS_DB,
  ROOMS_DB,
  START_LAG_S,
  type Staged,
  stage,
} from './template.ts';
import type { NetworkWeights } from './weights/shape.ts';
import { fitWhitening, type InRooms } from './whitening.ts';

export type { Model, Take, WordForecast };

/** For live feedback while teaching: what can be told of one take alone. A click is short by nature. */
export function inspectTake(take: Take): TakeInspection {
  const { report } = cutTake(take);
  const isClick = clickOf(take) !== null;
  return { ...report, isClick, faults: report.faults.filter((fault) => !isClick || fault !== 'too-short') };
}

export interface TakeInspection extends TakeReport {
  /** One or two hard pulses: a clicker, a click of the tongue, or a thing put on the table. */
  readonly isClick: boolean;
}

export interface Teaching {
  readonly words: Readonly<Record<string, readonly Take[]>>;
  /** What the handler says besides: praise, the dog's name, chatter. Two takes of each do most. */
  readonly talk: readonly Take[];
  /** What corrections made of what was heard; oldest first. Takes of words that are not taught by sound, and of another kind of ear, are left out. */
  readonly learned?: readonly Learned[];
}

/** What keeps a take, a word or the whole from being used. `word` is undefined for talk; `take` counts from 0. */
export type EnrolProblem =
  | { readonly kind: 'no-words' }
  | { readonly kind: 'no-takes'; readonly word: string }
  /** The other takes of this word are clicks. */
  | { readonly kind: 'not-a-click'; readonly word: string; readonly take: number }
  | { readonly kind: TakeFault; readonly word: string | undefined; readonly take: number };

export type Enrolment =
  | { readonly ok: true; readonly model: Model; readonly forecast: WordForecast[]; readonly problems: EnrolProblem[] }
  | { readonly ok: false; readonly problems: EnrolProblem[] };

export interface EnrolOptions {
  /** Without the network's weights the ear works on cepstra alone. */
  readonly weights?: NetworkWeights | undefined;
}

/** Faults with which a take is of no use; the others are told and the take is kept. */
const UNUSABLE: readonly TakeFault[] = ['not-finite', 'bad-rate', 'too-short', 'too-long', 'too-quiet'];

/** The loud room's noise is another than that of the rooms before it. */
const LOUD_SEED = 100_001;

interface Cut extends Owner, CutTake {}
interface StagedTake extends Owner {
  readonly rooms: readonly Staged[];
  readonly learnedOf?: string;
}

export function featureFor(weights: NetworkWeights | undefined, isCleaned: boolean, network?: Network): Feature {
  return weights ? createFusedFeature(weights, isCleaned ? 'cleaned' : 'fused', network) : createCepstraFeature();
}

function cutAll(teaching: Teaching): Cut[] {
  const cut = (word: string | undefined, takes: readonly Take[]): Cut[] =>
    takes.map((take, i) => ({ word, take: i, ...cutTake(take) }));
  return [...Object.entries(teaching.words).flatMap(([word, takes]) => cut(word, takes)), ...cut(undefined, teaching.talk)];
}

const usable = (cut: Cut): boolean => !cut.report.faults.some((fault) => UNUSABLE.includes(fault));

function problemsOf(cuts: readonly Cut[]): EnrolProblem[] {
  return cuts.flatMap((cut) => cut.report.faults.map((kind) => ({ kind, word: cut.word, take: cut.take })));
}

/** Without a usable take of every word there is nothing to listen for. */
function missing({ spoken, clicks }: Sorted, cuts: readonly Cut[]): EnrolProblem[] {
  const words = Object.keys(spoken.words);
  if (words.length + clicks.length === 0) return [{ kind: 'no-words' }];
  return words.filter((word) => !cuts.some((c) => c.word === word && usable(c))).map((word) => ({ kind: 'no-takes', word }));
}

function templatesOf(staged: readonly StagedTake[], normaliser: Normaliser, feature: Feature): OwnedTemplate[] {
  return staged.flatMap(({ word, take, rooms, learnedOf }) =>
    rooms.map(({ rows, from, to }, room) => {
      const values = new Float32Array((to - from) * feature.dims);
      for (let r = from; r < to; r++)
        normalise(rows[r] as Float32Array, normaliser, feature.parts, values, (r - from) * feature.dims);
      return {
        word,
        take,
        steps: to - from,
        values,
        ...(learnedOf !== undefined && { learnedOf }),
        ...(room >= ROOMS_DB.length && { loud: true as const }),
      };
    }),
  );
}

/** As they were heard: in the room they were said in, so that no other need be imagined. Numbered after the taught ones. */
function learnedTakes({ words, talk, learned = [] }: Teaching, feature: Feature): StagedTake[] {
  const numbers = new Map<string | undefined, number>();
  const numbered = (word: string | undefined): number => {
    const take = numbers.get(word) ?? (word === undefined ? talk : (words[word] ?? [])).length;
    numbers.set(word, take + 1);
    return take;
  };
  const ofUse = learned
    .filter(({ word }) => word === undefined || words[word] !== undefined)
    .filter(({ stretch }) => stretch.features === feature.kind && stretch.dims === feature.dims);
  return newestOf(ofUse).map(({ of, word, stretch }) => {
    const room = { rows: unpack(stretch), from: stretch.from, to: stretch.to, startLagS: START_LAG_S, endLagS: END_LAG_S };
    return { word, take: numbered(word), rooms: [room], learnedOf: of };
  });
}

/** A take that was learnt has no number on the screen: advice on it would point at another. */
function onTaughtTakes(forecast: readonly WordForecast[], { words }: Teaching): WordForecast[] {
  const isTaught = (word: string, take: number) => take < (words[word]?.length ?? 0);
  return forecast.map((each) => ({
    ...each,
    advice: each.advice.filter((advice) => advice.kind !== 'takes-unlike' || isTaught(each.word, advice.take)),
  }));
}

/** Every taught take in its rooms, a loud one among them: what differs between these rooms is not the word. */
function inRooms(taught: readonly StagedTake[], inLoud: (take: number) => Staged): InRooms[] {
  return taught.map(({ word, rooms }, i) => {
    const all = rooms.length > ROOMS_DB.length ? rooms : [...rooms, inLoud(i)];
    return { word, rooms: all.map(({ rows, from, to }) => rows.slice(from, to)) };
  });
}

/** What takes the noise out, where the ear has it and it leaves this handler's words alone. */
function cleanFor(weights: NetworkWeights | undefined, cuts: readonly Cut[]): Clean | null {
  const cleaner = weights?.cleaner && cleanerOf(weights.cleaner);
  return cleaner && survives(cuts, cleaner.whole) ? cleaner.whole : null;
}

export function enrol(teaching: Teaching, options: EnrolOptions = {}): Enrolment {
  const sorted = sortClicks(teaching);
  const cuts = cutAll(sorted.spoken);
  const problems = [...problemsOf(cuts), ...sorted.strays.map((stray) => ({ kind: 'not-a-click', ...stray }) as const)];
  const lacking = missing(sorted, cuts);
  if (lacking.length > 0) return { ok: false, problems: [...problems, ...lacking] };
  const good = cuts.filter(usable);
  const clean = cleanFor(options.weights, good);
  const network = options.weights && createNetwork(options.weights);
  const feature = featureFor(options.weights, clean !== null, network);
  const roomsDb = clean ? [...ROOMS_DB, ...LOUD_ROOMS_DB] : ROOMS_DB;
  const inRoom = ({ speech }: Cut, snrDb: number, seed: number): Staged =>
    stage(featureFor(options.weights, clean !== null, network), speech, snrDb, seed, clean ?? asItComes);
  const taughtTakes: StagedTake[] = good.map((cut, i) => ({
    word: cut.word,
    take: cut.take,
    rooms: roomsDb.map((snrDb, room) => inRoom(cut, snrDb, 1 + i * roomsDb.length + room)),
  }));
  const staged = [...taughtTakes, ...learnedTakes(sorted.spoken, feature)];
  const plain = fitNormaliser(
    staged.flatMap((s) => s.rooms.flatMap((room) => room.rows)),
    feature.dims,
  );
  const inLoudRoom = (take: number): Staged => inRoom(good[take] as Cut, DROWNED_ROOM_DB, LOUD_SEED + take);
  const normaliser: Normaliser =
    feature.kind !== 'cepstra'
      ? { ...plain, whitening: fitWhitening(inRooms(taughtTakes, inLoudRoom), plain, feature.parts) }
      : plain;
  const words = Object.keys(sorted.spoken.words);
  const ground: Ground = {
    words,
    templates: templatesOf(staged, normaliser, feature),
    normaliser,
    parts: feature.parts,
    dims: feature.dims,
  };
  const quiet: Ground = { ...ground, templates: ground.templates.filter(({ loud }) => !loud) };
  const heardIn = (room: number, { word, take, rooms }: StagedTake) => ({
    word,
    take,
    rows: (rooms.slice(0, room).at(-1) as Staged).rows,
  });
  const rehearsed = rehearse(
    staged.map((s) => heardIn(ROOMS_DB.length, s)),
    quiet,
  );
  const inLoud =
    clean &&
    rehearse(
      staged.map((s) => heardIn(roomsDb.length, s)),
      ground,
    );
  const taught = calibrate(rehearsed, words, feature.kind, inLoud);
  const model: Model = {
    version: 1,
    features: feature.kind,
    parts: feature.parts,
    words: taught,
    clicks: sorted.clicks,
    templates: ground.templates,
    normaliser,
    voice: voiceOf(good.flatMap(({ word, speech }) => (word === undefined ? [] : [{ word, speech }]))),
    taughtLevelDb: mean(good.filter((c) => c.word !== undefined).map((c) => c.report.levelDb)),
  };
  return {
    ok: true,
    model,
    forecast: [...onTaughtTakes(forecastOf(rehearsed, taught), sorted.spoken), ...sorted.forecast],
    problems,
  };
}
