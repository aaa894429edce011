/** The plan: its ladder as stairs, easiest at the bottom. */
import { areaOf, criterionS, type Step } from '../../core/plan.ts';
import { useApp } from '../app-context.tsx';
import css from './plan.module.css';

export function PlanScreen({ planId }: { planId: string }) {
  const plan = useApp((state) => state.library.plans).find(({ id }) => id === planId);
  if (!plan) return <p>There is no such plan on this device.</p>;
  return (
    <div className="stack wide">
      <header className="stack">
        <h1>{plan.title}</h1>
        <p className="soft">{plan.position}</p>
      </header>
      <ol className={css.ladder} reversed>
        {plan.steps.toReversed().map((step) => (
          <Tread key={step.id} step={step} />
        ))}
      </ol>
    </div>
  );
}

function Tread({ step }: { step: Step }) {
  return (
    <li>
      {step.title} · {areaOf(step)} · {criterionS(step)} s
    </li>
  );
}
