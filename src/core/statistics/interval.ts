/** Names an interval and the two constants every 95 % interval here shares. */

/** Both ends belong to it; 95 % unless its maker says otherwise. */
export interface Interval {
  readonly lower: number;
  readonly upper: number;
}

/** 97.5 % point of the standard normal distribution, to double precision (Abramowitz & Stegun 1964, 26.2; checked against jstat). */
export const Z_95 = 1.959963984540054;

/** Below so few trials no interval is drawn, only counts (CRITERION). The functions themselves answer for any n. */
export const FEWEST_FOR_INTERVAL = 5;

/** What a 95 % interval leaves out on either side. */
export const TAIL_95 = 0.025;
