/** What is kept of a word, or of what was nearly one: its features as bytes, enough to become a take. Not its sound. */

export interface Stretch {
  /** Which kind of ear heard it: an ear of another kind can make nothing of it. */
  readonly features: string;
  readonly dims: number;
  readonly steps: number;
  /** The word itself is the rows from `from` up to, not including, `to`; the others are what lies around it. */
  readonly from: number;
  readonly to: number;
  /** Row-major [step][dim], one step = the ear's step: value = base[dim] + scale[dim] × byte. */
  readonly bytes: Uint8Array;
  readonly base: Float32Array;
  readonly scale: Float32Array;
}
