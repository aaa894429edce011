/**
 * Says an English sentence in the handler's language: looks it up in that language's catalogue and fills in its holes.
 *
 * The language is chosen before anything is drawn, and once more when the handler chooses another; then everything is drawn anew.
 * So `t` belongs into functions, never into constants of a module, which would keep the language of the first moment.
 */
import type { GERMAN } from './languages/german.ts';

/** Every sentence that the app can say, in English. The German catalogue is the list: what is not in it does not compile. */
export type Message = keyof typeof GERMAN;

/** A sentence without holes: for tables of which one sentence is said. */
export type PlainMessage = Exclude<Message, `${string}{${string}`>;

export type Catalogue = Readonly<Record<Message, string>>;

/** BCP 47, as offered in the settings. */
export type LanguageTag = 'en' | 'de';

/** What each is called by those who speak it. */
export const LANGUAGES: Readonly<Record<LanguageTag, string>> = { en: 'English', de: 'Deutsch' };

interface Language {
  readonly tag: LanguageTag;
  /** For numbers and days: a day is written before its month. */
  readonly locale: string;
  /** Null: English needs none. */
  readonly catalogue: Catalogue | null;
}

const ENGLISH: Language = { tag: 'en', locale: 'en-GB', catalogue: null };

let spoken = ENGLISH;

/** The names of the holes of a message: "n" and "of" for "{n} of {of}". */
type Holes<M extends string> = M extends `${string}{${infer Hole}}${infer Rest}` ? Hole | Holes<Rest> : never;

type Values<M extends string> = [Holes<M>] extends [never] ? [] : [values: Readonly<Record<Holes<M>, string | number>>];

/** "{n} of {of} held." with its holes filled. What follows a # is for translators alone: it keeps two uses of one word apart. */
export function t<M extends Message>(message: M, ...[values]: Values<M>): string {
  const holes = values as Readonly<Record<string, string | number>> | undefined;
  return pieces(message)
    .map((piece) => (typeof piece === 'string' ? piece : show(holes?.[piece.hole])))
    .join('');
}

/** The sentence in pieces, for those who put more than text into its holes. */
export function pieces(message: Message): readonly (string | { readonly hole: string })[] {
  const sentence = spoken.catalogue?.[message] ?? message.replace(/#.*/s, '');
  return sentence.split(/\{(\w+)\}/).map((piece, at) => (at % 2 === 0 ? piece : { hole: piece }));
}

/** "3.5" in English, "3,5" in German; as many decimals as it has. */
export const written = (value: number): string => plain().format(value);

function show(value: string | number | undefined): string {
  return typeof value === 'number' ? written(value) : isolated(value ?? '');
}

/** Letters of scripts that run from right to left: Hebrew, Arabic and their kin (the blocks of Unicode, R). */
const RIGHT_TO_LEFT = /[\u0590-\u08ff\ufb1d-\ufdff\ufe70-\ufeff]/;

/**
 * A name in such a script keeps its own order and disturbs none beside it: between a first-strong isolate and its end (UAX 9, R).
 * A language that itself runs so would have to set apart everything that is put into its sentences.
 */
const isolated = (value: string): string => (RIGHT_TO_LEFT.test(value) ? `\u2068${value}\u2069` : value);

/** "1.5" in English, "1,5" in German; always so many decimals. */
export function fixed(value: number, decimals: number): string {
  const { format } = new Intl.NumberFormat(spoken.locale, {
    minimumFractionDigits: decimals,
    maximumFractionDigits: decimals,
    useGrouping: false,
  });
  return format(value);
}

/** The locale for days and times: BCP 47. */
export const localeSpoken = (): string => spoken.locale;

export const languageSpoken = (): LanguageTag => spoken.tag;

let plainNumbers: Intl.NumberFormat | null = null;

/** Made once a language: making one costs more than using it a hundred times. */
function plain(): Intl.NumberFormat {
  plainNumbers ??= new Intl.NumberFormat(spoken.locale, { maximumFractionDigits: 20, useGrouping: false });
  return plainNumbers;
}

/** The one offered that comes nearest to the browser's wishes: "de-CH" is answered in German, what is not offered in English. */
export function nearestLanguage(wished: readonly string[]): LanguageTag {
  const tags = wished.map((wish) => wish.toLowerCase().split('-')[0]);
  return tags.find((tag): tag is LanguageTag => tag !== undefined && Object.hasOwn(LANGUAGES, tag)) ?? 'en';
}

/** From here on the app speaks this language. A catalogue that cannot be fetched throws, and the language stays. */
export async function speak(tag: LanguageTag): Promise<void> {
  spoken = tag === 'de' ? { tag, locale: 'de-DE', catalogue: (await import('./languages/german.ts')).GERMAN } : ENGLISH;
  plainNumbers = null;
}
