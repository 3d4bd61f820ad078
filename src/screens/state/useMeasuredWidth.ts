import { useLayoutEffect, useRef, useState, type RefObject } from 'react';

/** Width of an element in CSS pixels, so that a drawing can keep its letters at a readable size. */
export function useMeasuredWidth<E extends Element>(
  fallbackPx: number,
): [RefObject<E | null>, number] {
  const ref = useRef<E>(null);
  const [widthPx, setWidthPx] = useState(fallbackPx);
  useLayoutEffect(() => {
    const element = ref.current;
    if (element === null) return;
    const measure = () => {
      const measured = Math.round(element.getBoundingClientRect().width);
      if (measured > 0) setWidthPx(measured);
    };
    measure();
    const observer = new ResizeObserver(measure);
    observer.observe(element);
    return () => observer.disconnect();
  }, []);
  return [ref, widthPx];
}

/** Size of the page's running text in CSS pixels, as the style sheet sets it for this screen. */
export function textSizePx(): number {
  const declared = getComputedStyle(document.documentElement).getPropertyValue('--text-px');
  const size = Number.parseFloat(declared);
  return Number.isFinite(size) && size > 0 ? size : DEFAULT_TEXT_PX;
}

/** The tablet's size from the style sheet, for where there is none. */
const DEFAULT_TEXT_PX = 22;
