/** The German catalogue, and by its keys the list of all that the app can say. One part a room; a sentence stands in one part only. */

import { GERMAN_COMPARE } from './german-compare.ts';
import { GERMAN_CORE } from './german-core.ts';
import { GERMAN_DEMO } from './german-demo.ts';
import { GERMAN_DESK } from './german-desk.ts';
import { GERMAN_DOGS } from './german-dogs.ts';
import { GERMAN_EXAM } from './german-exam.ts';
import { GERMAN_HANDOVER } from './german-handover.ts';
import { GERMAN_HOME } from './german-home.ts';
import { GERMAN_LADDERS } from './german-ladders.ts';
import { GERMAN_OBSERVE } from './german-observe.ts';
import { GERMAN_PICTURE } from './german-picture.ts';
import { GERMAN_PLAN } from './german-plan.ts';
import { GERMAN_PRACTICE } from './german-practice.ts';
import { GERMAN_PROGRESS } from './german-progress.ts';
import { GERMAN_REVIEW } from './german-review.ts';
import { GERMAN_RULE_FIGURES } from './german-rule-figures.ts';
import { GERMAN_RULES } from './german-rules.ts';
import { GERMAN_RUNGS } from './german-rungs.ts';
import { GERMAN_SESSION } from './german-session.ts';
import { GERMAN_SETTINGS } from './german-settings.ts';
import { GERMAN_SOUND_CHECK } from './german-sound-check.ts';
import { GERMAN_STORAGE } from './german-storage.ts';
import { GERMAN_STORE } from './german-store.ts';
import { GERMAN_SUMMARY } from './german-summary.ts';
import { GERMAN_SYNC } from './german-sync.ts';

export const GERMAN = {
  ...GERMAN_CORE,
  ...GERMAN_LADDERS,
  ...GERMAN_DEMO,
  ...GERMAN_RULES,
  ...GERMAN_RUNGS,
  ...GERMAN_SUMMARY,
  ...GERMAN_PICTURE,
  ...GERMAN_PLAN,
  ...GERMAN_RULE_FIGURES,
  ...GERMAN_REVIEW,
  ...GERMAN_PRACTICE,
  ...GERMAN_HOME,
  ...GERMAN_SETTINGS,
  ...GERMAN_SOUND_CHECK,
  ...GERMAN_DOGS,
  ...GERMAN_PROGRESS,
  ...GERMAN_COMPARE,
  ...GERMAN_OBSERVE,
  ...GERMAN_HANDOVER,
  ...GERMAN_DESK,
  ...GERMAN_EXAM,
  ...GERMAN_STORAGE,
  ...GERMAN_SESSION,
  ...GERMAN_STORE,
  ...GERMAN_SYNC,
} as const;
