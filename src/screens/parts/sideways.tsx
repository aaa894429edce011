/** Shows that a box scrolls sideways: it fades on the side where something is out of sight, and words below it say so. */
import { type ReactNode, useCallback, useLayoutEffect, useRef, useState } from 'react';
import { t } from '../../core/language.ts';
import css from './sideways.module.css';

/** Fractions of a pixel are no content. */
const SLACK_PX = 2;

interface Hidden {
  readonly left: boolean;
  readonly right: boolean;
}

const NOTHING: Hidden = { left: false, right: false };

export function useSideways() {
  const box = useRef<HTMLDivElement>(null);
  const [hidden, setHidden] = useState(NOTHING);
  const look = useCallback(() => {
    if (!box.current) return;
    const { left, right } = hiddenIn(box.current);
    setHidden((before) => (before.left === left && before.right === right ? before : { left, right }));
  }, []);
  // After every drawing: what is in the box may have grown.
  useLayoutEffect(look);
  useLayoutEffect(() => {
    // A fold that opens and a phone that is turned draw nothing anew.
    if (!box.current || typeof ResizeObserver === 'undefined') return;
    const watch = new ResizeObserver(look);
    watch.observe(box.current);
    return () => watch.disconnect();
  }, [look]);
  const props = { ref: box, onScroll: look, 'data-left': hidden.left || undefined, 'data-right': hidden.right || undefined };
  return { box, props, fades: css.fades ?? '', isWide: hidden.left || hidden.right };
}

function hiddenIn(box: HTMLElement): Hidden {
  const spareX = box.scrollWidth - box.clientWidth;
  // Where words run from right to left a box begins at its right end, and counts down from 0 (CSSOM View, R).
  const leftPx = getComputedStyle(box).direction === 'rtl' ? spareX + box.scrollLeft : box.scrollLeft;
  return { left: leftPx > SLACK_PX, right: spareX - leftPx > SLACK_PX };
}

/** What the fading says, in words: for those who do not see it. */
export function MoreToTheSide() {
  return <p className={css.more}>{t('There is more to the side: slide it, or scroll.')}</p>;
}

interface WideProps {
  /** What is in it: it is reached by keys, and must have a name. */
  readonly label: string;
  readonly className?: string | undefined;
  /** Its first column stays in place, so nothing fades there. */
  readonly isPinned?: boolean;
  readonly children: ReactNode;
}

/** A table that may be wider than the screen. */
export function Wide({ label, className = '', isPinned = false, children }: WideProps) {
  const { props, fades, isWide } = useSideways();
  return (
    <>
      <section
        {...props}
        className={`${css.wide} ${fades} ${isPinned ? css.pinned : ''} ${className}`}
        // What scrolls must be reached by keys; what does not is no stop of theirs.
        tabIndex={isWide ? 0 : undefined}
        aria-label={label}
      >
        {children}
      </section>
      {isWide ? <MoreToTheSide /> : null}
    </>
  );
}
