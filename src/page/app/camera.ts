/** Where the eye is over the table: moved and brought nearer by wheel, touch, mouse and keys. */
import type { RefObject } from 'preact';
import { useEffect, useMemo, useRef } from 'preact/hooks';
import type { TableLayout } from '../outline';

/** Pixels of the screen of a millimeter, and where the corner of the table is. */
interface Eye {
  readonly scale: number;
  readonly x: number;
  readonly y: number;
}

/** What moves the eye. */
export interface Camera {
  /** Shows the whole table. */
  readonly fit: () => void;
  /** Brings it nearer by a factor, about a place of the screen or the middle. */
  readonly nearer: (factor: number, x?: number, y?: number) => void;
  /** Shows a millimeter as so many pixels, about the middle. */
  readonly at: (perMillimeter: number) => void;
  readonly by: (dx: number, dy: number) => void;
  /** Brings a place of the table to the middle. */
  readonly to: (x: number, y: number) => void;
}

/** Times nearer than the whole table. */
const NEAREST = 60;
/** And farther. No tolerance: how far one may go. */
const FARTHEST = 0.5;
/** Share of the frame that stays empty around a table that is shown whole. */
const EDGE = 0.02;

/** What is looked at, and the frame in pixels that it is looked at through. */
interface Frame {
  readonly layout: Pick<TableLayout, 'width' | 'height'>;
  readonly width: number;
  readonly height: number;
}

/** The camera of a drawing; `table` is moved in a frame of `width` by `height` pixels. */
export function useCamera(
  table: RefObject<SVGGElement | null>,
  layout: Frame['layout'],
  width: number,
  height: number,
): Camera {
  const frame = useRef<Frame>({ layout, width, height });
  frame.current = { layout, width, height };
  const camera = useMemo(
    () =>
      cameraOver(
        () => frame.current,
        ({ scale, x, y }) => {
          table.current?.setAttribute('transform', `translate(${x} ${y}) scale(${scale})`);
        },
      ),
    [table],
  );
  useEffect(() => {
    camera.framed();
  }, [camera, layout.width, layout.height, width, height]);
  return camera;
}

/** A camera that shows where it is; it follows its frame until somebody moves it. */
function cameraOver(
  frame: () => Frame,
  show: (eye: Eye) => void,
): Camera & { readonly framed: () => void } {
  let eye: Eye = { scale: 1, x: 0, y: 0 };
  let isMoved = false;
  const look = (next: Eye, byHand: boolean): void => {
    eye = next;
    isMoved = byHand;
    show(eye);
  };
  const whole = (): Eye => {
    const { layout, width, height } = frame();
    const scale = (1 - 2 * EDGE) * Math.min(width / layout.width, height / layout.height);
    return {
      scale,
      x: (width - layout.width * scale) / 2,
      y: (height - layout.height * scale) / 2,
    };
  };
  const middle = (): readonly [number, number] => [frame().width / 2, frame().height / 2];
  const nearer: Camera['nearer'] = (factor, atX = middle()[0], atY = middle()[1]) => {
    const base = whole().scale;
    const scale = Math.min(base * NEAREST, Math.max(base * FARTHEST, eye.scale * factor));
    const share = scale / eye.scale;
    look({ scale, x: atX - (atX - eye.x) * share, y: atY - (atY - eye.y) * share }, true);
  };
  const fit = (): void => {
    look(whole(), false);
  };
  return {
    nearer,
    fit,
    framed: () => {
      if (!isMoved) fit();
    },
    at: (perMillimeter) => {
      nearer(perMillimeter / eye.scale);
    },
    by: (dx, dy) => {
      look({ ...eye, x: eye.x + dx, y: eye.y + dy }, true);
    },
    to: (x, y) => {
      const [atX, atY] = middle();
      look({ ...eye, x: atX - x * eye.scale, y: atY - y * eye.scale }, true);
    },
  };
}

/** Pixels that a pointer may move while it still points. */
const STILL = 4;
/** How much nearer a notch of the wheel brings; a line and a page of it in pixels. */
const WHEEL = 0.0015;
const WHEEL_UNITS = [1, 16, 400] as const;

/** Lets wheel, touch and mouse move a camera; `onPoint` gets what was pointed at without moving. */
export function usePointers(
  drawing: RefObject<SVGSVGElement | null>,
  camera: Camera,
  onPoint: (target: Element) => void,
): void {
  const latest = useRef(onPoint);
  latest.current = onPoint;
  useEffect(() => {
    const svg = drawing.current;
    if (svg === null) return undefined;
    const leave = new AbortController();
    const { signal } = leave;
    const hand = handOver(svg, camera, (target) => {
      latest.current(target);
    });
    svg.addEventListener('pointerdown', hand.down, { signal });
    svg.addEventListener('pointermove', hand.move, { signal });
    svg.addEventListener('pointerup', hand.up, { signal });
    svg.addEventListener('pointercancel', hand.up, { signal });
    svg.addEventListener('wheel', hand.wheel, { signal, passive: false });
    return () => {
      leave.abort();
    };
  }, [drawing, camera]);
}

/** What a hand does over a drawing: one finger or the mouse moves it, two bring it nearer. */
function handOver(svg: SVGSVGElement, camera: Camera, onPoint: (target: Element) => void) {
  const pointers = new Map<number, Pixel>();
  let way = 0;
  let target: Element | undefined;
  const within = ({ clientX, clientY }: MouseEvent): Pixel => {
    const { left, top } = svg.getBoundingClientRect();
    return { x: clientX - left, y: clientY - top };
  };
  return {
    down: (event: PointerEvent): void => {
      pointers.set(event.pointerId, within(event));
      if (pointers.size === 1) way = 0;
      target = event.target instanceof Element ? event.target : undefined;
      svg.setPointerCapture(event.pointerId);
    },
    move: (event: PointerEvent): void => {
      const before = pointers.get(event.pointerId);
      if (before === undefined) return;
      const now = within(event);
      way += apart(now, before);
      const other = [...pointers].find(([id]) => id !== event.pointerId)?.[1];
      pointers.set(event.pointerId, now);
      if (other !== undefined) {
        const factor = Math.max(1, apart(now, other)) / Math.max(1, apart(before, other));
        camera.nearer(factor, (now.x + other.x) / 2, (now.y + other.y) / 2);
        camera.by((now.x - before.x) / 2, (now.y - before.y) / 2);
      } else if (way > STILL) camera.by(now.x - before.x, now.y - before.y);
    },
    up: (event: PointerEvent): void => {
      const wasLast = pointers.delete(event.pointerId) && pointers.size === 0;
      if (event.type === 'pointerup' && wasLast && way <= STILL && target) onPoint(target);
    },
    wheel: (event: WheelEvent): void => {
      event.preventDefault();
      const { x, y } = within(event);
      const turned = event.deltaY * (WHEEL_UNITS[event.deltaMode as 0 | 1 | 2] ?? 1);
      camera.nearer(Math.exp(-turned * WHEEL), x, y);
    },
  };
}

/** A place in the drawing's frame. */
interface Pixel {
  readonly x: number;
  readonly y: number;
}

function apart(a: Pixel, b: Pixel): number {
  return Math.hypot(a.x - b.x, a.y - b.y);
}
