/** The size of an element as it is laid out. */
import type { RefObject } from 'preact';
import { useLayoutEffect, useState } from 'preact/hooks';

/** Width and height in pixels, followed as they change; 0 before the element is there. */
export function useFrame(element: RefObject<HTMLElement | null>): {
  readonly width: number;
  readonly height: number;
} {
  const [frame, setFrame] = useState({ width: 0, height: 0 });
  useLayoutEffect(() => {
    const own = element.current;
    if (own === null) return undefined;
    const measure = (): void => {
      setFrame({ width: own.clientWidth, height: own.clientHeight });
    };
    measure();
    const observer = new ResizeObserver(measure);
    observer.observe(own);
    return () => {
      observer.disconnect();
    };
  }, [element]);
  return frame;
}
