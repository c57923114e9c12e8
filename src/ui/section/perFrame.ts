/** Runs the latest of many requests once a frame: dragging sends more moves than the screen shows. */
export function perFrame(): { (work: () => void): void; flush(): void } {
  let pending: (() => void) | null = null;
  let frame = 0;
  const run = () => {
    const work = pending;
    pending = null;
    frame = 0;
    work?.();
  };
  const ask = (work: () => void) => {
    pending = work;
    if (frame === 0) frame = requestAnimationFrame(run);
  };
  return Object.assign(ask, {
    flush() {
      if (frame !== 0) cancelAnimationFrame(frame);
      run();
    },
  });
}
