/** A value once it has stayed the same for a while, for what takes too long to follow every change. */
import { useEffect, useState } from 'preact/hooks';

/** ms for which nothing is to change. */
const STILL = 500;

/** The last value that stayed; the first at once. */
export function useSettled<Value>(value: Value): Value {
  const [settled, setSettled] = useState(value);
  useEffect(() => {
    const timer = setTimeout(() => {
      setSettled(value);
    }, STILL);
    return () => {
      clearTimeout(timer);
    };
  }, [value]);
  return settled;
}
