/** Posts an empty message every so many milliseconds, the number being the first message it gets. */
self.onmessage = ({ data: everyMs }: MessageEvent<number>) => {
  setInterval(() => self.postMessage(null), everyMs);
};
