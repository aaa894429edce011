/** Tells whether what was read from a file or a shelf is a rule that a session can run. Apart from the rules themselves, which reading needs not. */
import { LONGEST_BLOCK, LONGEST_SLIDING } from './chain/longest.ts';
import type { KOfMRule, SessionRule, StoredRule } from './rule.ts';

/** Why a k-of-m rule cannot be; null when it can. */
export function refuseKOfM({ kept, of, window }: KOfMRule): { readonly name: 'kept' | 'of'; readonly bound: string } | null {
  const most = window === 'sliding' ? LONGEST_SLIDING : LONGEST_BLOCK;
  if (!Number.isInteger(of) || of < 1 || of > most) return { name: 'of', bound: `a whole number from 1 to ${most}` };
  if (!Number.isInteger(kept) || kept < 1 || kept > of) return { name: 'kept', bound: `a whole number from 1 to ${of}` };
  return null;
}

/** Is this, read from a file or a shelf, a rule that a session can run? */
export function isStoredRule(value: unknown): value is StoredRule {
  if (value === 'steady') return true;
  if (typeof value !== 'object' || value === null) return false;
  const rule = value as SessionRule;
  if (rule.kind === 'steady') return rule.halving === undefined || rule.halving === 'ahead';
  if (rule.kind !== 'k-of-m') return ['cautious', 'sequential'].includes(rule.kind);
  return (rule.window === 'blocks' || rule.window === 'sliding') && refuseKOfM(rule) === null;
}
