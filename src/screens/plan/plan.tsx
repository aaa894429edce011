/** The plan: what it is, its ladder as stairs, and the rule that judges its steps. Every change is kept at once and can be taken back. */
import { useEffect, useState } from 'react';
import { Link, useLocation } from 'wouter';
import { type Draft, draftOf, editDraft, type PlanEdit, undoEdit } from '../../core/edit-plan.ts';
import { t } from '../../core/language.ts';
import type { NextStart } from '../../core/next-start.ts';
import type { Plan } from '../../core/plan.ts';
import { ruleOf } from '../../core/rule.ts';
import { useApp, useIntents } from '../app-context.tsx';
import { Ladder } from './ladder.tsx';
import { NewPlan } from './new-plan.tsx';
import css from './plan.module.css';
import { PlanFile } from './plan-file.tsx';
import { sayRefusal } from './refusal-words.ts';
import { RulePart } from './rule-part.tsx';

/** `planId` "new" makes one. */
export function PlanScreen({ planId }: { planId: string }) {
  const plan = useApp((state) => state.library.plans).find(({ id }) => id === planId);
  if (planId === 'new') return <NewPlan />;
  if (!plan)
    return (
      <div className="stack">
        <h1>{t('There is no such plan on this device')}</h1>
        <Link href="/plan/new" className="button primary">
          {t('Make a plan')}
        </Link>
      </div>
    );
  return <EditPlan key={plan.id} kept={plan} />;
}

function EditPlan({ kept }: { kept: Plan }) {
  const { savePlan, newId } = useIntents();
  const [draft, setDraft] = useState<Draft>(() => draftOf(kept));
  const [openId, setOpenId] = useState<string | null>(null);
  const next = useNextStart(kept);
  const { plan, past, refused } = draft;
  const show = (changed: Draft) => {
    setDraft(changed);
    if (changed.plan !== plan) void savePlan(changed.plan);
  };
  const onEdit = (edit: PlanEdit) => show(editDraft(draft, edit));
  return (
    <div className="stack wide">
      <Head plan={plan} />
      <section className={css.part}>
        <div className={css.head}>
          <h2>{t('The ladder')}</h2>
          <button type="button" disabled={past.length === 0} onClick={() => show(undoEdit(draft))}>
            {t('Undo')}
          </button>
        </div>
        <p role="status" className={css.refusal}>
          {refused && !isOfAStep(refused.edit) && refused.edit.kind !== 'choose-rule' ? sayRefusal(refused, plan.steps) : ''}
        </p>
        <Ladder
          steps={plan.steps}
          startStepId={next?.startStepId ?? null}
          onOpen={setOpenId}
          {...{ openId, refused, onEdit, newId }}
        />
        <p className="soft small">
          {t(
            'Easiest at the bottom. Tap a step to change it. A session under way keeps the ladder it began with; the next one begins on the nearest easier step that is left.',
          )}
        </p>
      </section>
      <RulePart
        rule={ruleOf(plan.rule)}
        refusal={refused?.edit.kind === 'choose-rule' ? sayRefusal(refused, plan.steps) : ''}
        own={next?.known ?? null}
        onChoose={(rule) => onEdit({ kind: 'choose-rule', rule })}
      />
      <PlanFile planId={plan.id} />
    </div>
  );
}

/** What is wrong with a step is said beside it; the rest here. */
function isOfAStep(edit: PlanEdit): boolean {
  return 'stepId' in edit || edit.kind === 'insert';
}

function Head({ plan }: { plan: Plan }) {
  const dog = useApp((state) => state.library.dogs).find(({ id }) => id === plan.dogId);
  const { practise } = useIntents();
  const [, go] = useLocation();
  return (
    <header className="stack">
      <h1>{plan.title}</h1>
      <p className="soft">
        {dog ? `${dog.name} · ` : ''}
        {plan.position}
      </p>
      <div className="row">
        <button type="button" className="primary" onClick={() => void practise(plan.id).then(() => go('/practice'))}>
          {t('Practise')}
        </button>
        <Link href={`/give/${encodeURIComponent(plan.id)}`} className="button">
          {t('Give as homework')}
        </Link>
        <Link href="/plan/new">{t('Make another plan')}</Link>
      </div>
    </header>
  );
}

/** Where the next session would start, asked again whenever the plan was kept anew. */
function useNextStart(plan: Plan): NextStart | null {
  const { startOf } = useIntents();
  const [next, setNext] = useState<NextStart | null>(null);
  useEffect(() => {
    let here = true;
    void startOf(plan.id).then((start) => here && setNext(start));
    return () => {
      here = false;
    };
  }, [plan, startOf]);
  return next;
}
