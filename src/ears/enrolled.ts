/** What comes of teaching, as the screens may read it: the model stays sealed, the forecast is in plain numbers. */
import type { EnrolProblem, Model, WordForecast } from '../hearing/enrol.ts';

export type { Change, Known } from '../hearing/learn.ts';

export type Enrolled =
  | {
      readonly ok: true;
      readonly model: Model;
      readonly forecast: readonly WordForecast[];
      readonly problems: readonly EnrolProblem[];
    }
  | { readonly ok: false; readonly problems: readonly EnrolProblem[] };
