/** Describes an examination that is to come: the day, and what the veterinarian means to do, in this order. */
import type { BodyArea } from '../plan.ts';
import type { Seconds } from '../units.ts';

/** One thing that is to be done. */
export interface ExamItem {
  readonly id: string;
  /** `position`: holding still, and nothing is touched. */
  readonly area: BodyArea;
  /** In a few words: "look into the left ear". */
  readonly what: string;
  /** How long it takes, s. */
  readonly forS: Seconds;
  /** The step of a plan that is this very handling. Absent: the words alone tell. */
  readonly step?: { readonly planId: string; readonly stepId: string };
}

export interface ExamPlan {
  readonly id: string;
  readonly dogId: string;
  /** The day where it is held: `2026-03-01`. */
  readonly date: string;
  /** The id of the place; '' when it is not said. */
  readonly place: string;
  /** In the order in which they are to be done. */
  readonly items: readonly ExamItem[];
  /** Not shown any more; nothing is deleted. */
  readonly calledOff?: boolean;
}

/** More than a visit holds; a longer list cannot be read at the table. */
export const MOST_ITEMS = 30;
/** Fits above the big number in three lines. */
export const MOST_LETTERS = 120;

/** A day that the calendar has. */
export function isIsoDate(text: string): boolean {
  if (!/^\d{4}-\d\d-\d\d$/.test(text)) return false;
  const day = new Date(`${text}T00:00:00Z`);
  return !Number.isNaN(day.getTime()) && day.toISOString().startsWith(text);
}

/** The next one to come or to be held today; none left: the latest that was. Null: none is planned. */
export function nearestExam(exams: readonly ExamPlan[], dogId: string, todayIso: string): ExamPlan | null {
  const own = exams.filter((exam) => exam.dogId === dogId && !exam.calledOff).toSorted((a, b) => (a.date < b.date ? -1 : 1));
  return own.find(({ date }) => date >= todayIso) ?? own.at(-1) ?? null;
}
