/** What teaching leaves behind and listening needs. Plain data: it can be cloned, stored and sent to a worker. */
import type { ClickWord } from './click.ts';
import type { FeatureKind, Normaliser, Part } from './feature.ts';
import type { Voice } from './pitch.ts';
import type { Owner } from './score.ts';
import type { Template } from './slide.ts';

export interface TaughtWord {
  readonly word: string;
  /** Score at which a stretch counts as this word, and the width over which doubt turns into certainty. */
  readonly threshold: number;
  readonly width: number;
  /** The same for scores by all templates, those of loud rooms among them; absent: there are none. */
  readonly loud?: { readonly threshold: number; readonly width: number };
}

export interface OwnedTemplate extends Template, Owner {
  /** The heard event that a correction made this take of; absent: it was taught. */
  readonly learnedOf?: string;
  /** Made in a loud room: compared only where the room is loud. */
  readonly loud?: true;
}

export interface Model {
  readonly version: 1;
  readonly features: FeatureKind;
  readonly parts: readonly Part[];
  readonly words: readonly TaughtWord[];
  /** Words that are clicks: they are told apart by other means. */
  readonly clicks: readonly ClickWord[];
  readonly templates: readonly OwnedTemplate[];
  readonly normaliser: Normaliser;
  /** Level at which the handler was recorded while teaching, dB below full scale; the stream is brought to the same. */
  readonly taughtLevelDb: number;
  readonly voice: Voice;
}
