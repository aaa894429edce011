/** A copy of everything, out and in. */
import { exportText, parseExport } from '../store/export.ts';
import { type StoreProblem, sayDamage } from '../store/problem.ts';
import { isLive } from './live.ts';
import { showHeads } from './read-back.ts';
import type { Rooms } from './rooms.ts';
import { applySettings } from './sound-check.ts';
import { isoWithOffset } from './wall-clock.ts';

export type ImportResult =
  | { readonly ok: true; readonly added: number; readonly known: number; readonly refused: readonly string[] }
  | { readonly ok: false; readonly why: string };

export async function exportAll({ store, use, parts, writer }: Rooms): Promise<{ name: string; text: string } | null> {
  const all = await store.all();
  if (!all.ok) {
    use.setState({ writeProblem: all.problem });
    return null;
  }
  const at = isoWithOffset(parts.wall.now());
  return {
    name: `stillbeat-${at.slice(0, 10)}.json`,
    text: exportText({ ...all.value, events: [...all.value.events, ...writer.waiting()] }, at),
  };
}

export async function importAll(rooms: Rooms, text: string): Promise<ImportResult> {
  const { store, keeper, use, teaching } = rooms;
  if (isLive(rooms.practice.state())) return { ok: false, why: 'A session is running: finish it first.' };
  const parsed = parseExport(text);
  if (!parsed.ok) return { ok: false, why: sayProblem(parsed.problem) };
  const merged = await store.merge(parsed.value.events);
  if (!merged.ok) return { ok: false, why: sayProblem(merged.problem) };
  const library = await store.library();
  if (library.ok) keeper.replace(library.value.events);
  use.setState({ library: keeper.library() });
  applySettings(rooms);
  await showHeads(rooms);
  await teaching.refresh();
  return { ok: true, ...merged.value, refused: parsed.value.damaged.map(sayDamage) };
}

function sayProblem(problem: StoreProblem): string {
  switch (problem.kind) {
    case 'damaged':
      return problem.damaged.map(sayDamage).join('\n');
    case 'conflict':
      return `Event ${problem.id} is here already with other content; nothing was changed.`;
    default:
      return `It could not be saved (${problem.kind}); nothing was changed.`;
  }
}
