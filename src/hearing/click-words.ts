/** Sorts what is taught: a word whose takes are mostly clicks is heard as a click, everything else as speech. */
import { type Click, type ClickWord, clickOf, clicksIn, matchClick, teachClick } from './click.ts';
import type { Teaching } from './enrol.ts';
import type { WordForecast } from './forecast.ts';

export interface Sorted {
  readonly spoken: Teaching;
  readonly clicks: readonly ClickWord[];
  readonly forecast: readonly WordForecast[];
  /** Takes of a click word that are none. */
  readonly strays: readonly { readonly word: string; readonly take: number }[];
}

interface Found {
  readonly word: string;
  readonly takes: readonly (Click | null)[];
}

const MOST = 0.5;

const isClick = (click: Click | null): click is Click => click !== null;

export function sortClicks(teaching: Teaching): Sorted {
  const found = Object.entries(teaching.words).map(([word, takes]): Found => ({ word, takes: takes.map(clickOf) }));
  const clicky = found.filter(({ takes }) => takes.filter(isClick).length > MOST * takes.length);
  if (clicky.length === 0) return { spoken: teaching, clicks: [], forecast: [], strays: [] };
  const talk = teaching.talk.flatMap(clicksIn);
  const clicks = clicky.map(({ word, takes }) => teachClick(word, takes.filter(isClick), [...others(word, found), ...talk]));
  const words = Object.fromEntries(Object.entries(teaching.words).filter(([word]) => !clicky.some((c) => c.word === word)));
  return {
    spoken: { ...teaching, words },
    clicks,
    forecast: clicks.map((click) => forecastOf(click, clicks, talk)),
    strays: clicky.flatMap(({ word, takes }) => takes.flatMap((click, take) => (click ? [] : [{ word, take }]))),
  };
}

const others = (word: string, found: readonly Found[]): Click[] =>
  found.filter((each) => each.word !== word).flatMap(({ takes }) => takes.filter(isClick));

/** Each take against the others, each piece of talk and each other click against all. */
function forecastOf(own: ClickWord, all: readonly ClickWord[], talk: readonly Click[]): WordForecast {
  const { word, takes } = own;
  const missed = takes.filter((take) => !isHeard(take, { ...own, takes: takes.filter((other) => other !== take) }));
  const wrong = talk.filter((click) => isHeard(click, own));
  const like = all
    .filter((other) => other !== own)
    .map((other) => ({ other, share: other.takes.filter((take) => isHeard(take, own)).length / other.takes.length }))
    .filter(({ share }) => share > 0);
  return {
    word,
    heardAs: 'click',
    takes: takes.length,
    expectedMissShare: takes.length > 1 ? missed.length / takes.length : 0.5,
    expectedFalseShare: wrong.length / Math.max(1, talk.length),
    advice: [
      ...(takes.length < 3 ? [{ kind: 'too-few-takes', takes: takes.length } as const] : []),
      ...missed.map((take) => ({ kind: 'takes-unlike', take: takes.indexOf(take) }) as const),
      ...like.map(({ other, share }) => ({ kind: 'too-like', other: other.word, share }) as const),
    ],
  };
}

const isHeard = (click: Click, word: ClickWord): boolean => (matchClick(click, [word])[0]?.ratio ?? 2) <= 1;
