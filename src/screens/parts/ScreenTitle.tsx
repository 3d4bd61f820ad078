import { useEffect, useRef, type ReactNode } from 'react';

/**
 * A screen's heading. It takes the focus when the screen comes up after another, so that keyboard
 * and screen reader start at the top; not on the very first screen, where nothing was left behind.
 */
export function ScreenTitle({
  children,
  className = '',
}: {
  readonly children: ReactNode;
  readonly className?: string;
}) {
  const heading = useRef<HTMLHeadingElement>(null);
  useEffect(() => {
    if (aScreenWasShown) heading.current?.focus({ preventScroll: true });
    aScreenWasShown = true;
    window.scrollTo(0, 0);
  }, []);
  return (
    <h1 ref={heading} tabIndex={-1} className={className}>
      {children}
    </h1>
  );
}

let aScreenWasShown = false;
