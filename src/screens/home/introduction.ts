/** The first words of the app, in English: the first screen says them, and the built page has them before it (`vite.config.ts`). */
export const TITLE = 'Hold still, by choice';
export const INTRODUCTION =
  'You say a short word when the dog settles, another when you pay, a third when the head comes up; the phone on the table listens, taps the seconds and keeps every rep. After each rep it tells you whether to go on, go back, halve the step or rest. Everything stays on this device.';
