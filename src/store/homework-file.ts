/**
 * Writes homework into a file of its own and reads such a file back: whole, or refused with the reason.
 * The digest shows damage on the way. It is no signature: whoever changes a file on purpose can make its digest anew.
 */
import { checkPlan, type PlanProblem } from '../core/check-plan.ts';
import { type Homework, inOneOrder, planOfHomework } from '../core/handover/homework.ts';
import { t } from '../core/language.ts';
import { isTooDeep } from './import.ts';
import type { Damage } from './problem.ts';
import { checkHomework, shorten } from './record-check.ts';

const HOMEWORK_FORMAT = 'stillbeat homework';
const HOMEWORK_VERSION = 1;
const DIGEST = 'sha-256:';

/** Sixty steps with every text at its longest are some 700,000. */
const MOST_CHARACTERS = 1_000_000;

/** Version 1. `digest` is that of `homework` as JSON without spaces, the keys of every record in the order of their letters. */
interface HomeworkFile {
  readonly format: typeof HOMEWORK_FORMAT;
  readonly version: typeof HOMEWORK_VERSION;
  /** `sha-256:` and 64 hexadecimal digits. */
  readonly digest: string;
  readonly homework: Homework;
}

/** Why homework is not taken. Nothing of it is kept then. */
export type HomeworkRefusal =
  /** Something else, or nothing at all. */
  | { readonly kind: 'not-homework'; readonly damage: Damage }
  /** Made by a newer app than this one. */
  | { readonly kind: 'newer'; readonly version: number }
  /** It does not say any more what the trainer's app wrote. */
  | { readonly kind: 'changed-on-the-way' }
  /** Whole, but nothing that can be practised. */
  | { readonly kind: 'unfit'; readonly damage: Damage }
  /** A link, in a browser that cannot unpack one. */
  | { readonly kind: 'cannot-unpack' };

export type HomeworkRead =
  | { readonly ok: true; readonly homework: Homework }
  | { readonly ok: false; readonly refusal: HomeworkRefusal };

export const refuse = (refusal: HomeworkRefusal): HomeworkRead => ({ ok: false, refusal });

export async function homeworkText(homework: Homework): Promise<string> {
  const digest = DIGEST + hex(await digestOf(homework));
  const file: HomeworkFile = { format: HOMEWORK_FORMAT, version: HOMEWORK_VERSION, digest, homework };
  return `${JSON.stringify(file, null, 1)}\n`;
}

export async function parseHomework(text: string): Promise<HomeworkRead> {
  if (text.length > MOST_CHARACTERS)
    return notHomework(
      'file',
      t('at most {n} characters', { n: String(MOST_CHARACTERS) }),
      t('{n} characters', { n: String(text.length) }),
    );
  const file = parseJson(text) as { readonly [Field in keyof HomeworkFile]?: unknown } | null;
  if (typeof file !== 'object' || file === null) return notHomework('file', 'JSON', text);
  if (file.format !== HOMEWORK_FORMAT) return notHomework('file › format', `"${HOMEWORK_FORMAT}"`, file.format);
  const { version, digest, homework } = file;
  if (typeof version === 'number' && version > HOMEWORK_VERSION) return refuse({ kind: 'newer', version });
  if (version !== HOMEWORK_VERSION) return notHomework('file › version', String(HOMEWORK_VERSION), version);
  if (digest !== DIGEST + hex(await digestOf(homework))) return refuse({ kind: 'changed-on-the-way' });
  return fitHomework(homework, 'homework');
}

/** Whole is not enough: what it asks must be a plan that can be practised, with its cautions. */
export function fitHomework(value: unknown, where: string): HomeworkRead {
  const checked = checkHomework(value, where);
  if ('expected' in checked) return refuse({ kind: 'unfit', damage: checked });
  const [problem] = checkPlan(planOfHomework(checked, 'plan', 'dog'));
  return problem ? refuse({ kind: 'unfit', damage: damageOf(problem, where) }) : { ok: true, homework: checked };
}

/** SHA-256 of what it says. */
export async function digestOf(homework: unknown): Promise<Uint8Array> {
  const bytes = new TextEncoder().encode(inOneOrder(homework ?? null));
  return new Uint8Array(await crypto.subtle.digest('SHA-256', bytes));
}

const hex = (bytes: Uint8Array): string => Array.from(bytes, (byte) => byte.toString(16).padStart(2, '0')).join('');

function parseJson(text: string): unknown {
  try {
    // Before anything walks through it: brackets without end would cost the stack.
    return isTooDeep(text) ? null : JSON.parse(text);
  } catch {
    return null;
  }
}

export function notHomework(path: string, expected: string, value: unknown): HomeworkRead {
  return refuse({ kind: 'not-homework', damage: { path, expected, got: shorten(value), record: value } });
}

function damageOf({ path, value, bound }: PlanProblem, where: string): Damage {
  return { path: `${where} › ${path}`, expected: bound, got: shorten(value), record: value };
}
