/** Where the frame lies in the picture, as shares of its width and height. What is outside is not read. */
const FRAME = { left: 0.08, top: 0.16, width: 0.84, height: 0.68 } as const;

interface Cut {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** The frame in whole pixels of a picture. */
const cutOf = (width: number, height: number): Cut => ({
  x: Math.round(width * FRAME.left),
  y: Math.round(height * FRAME.top),
  width: Math.round(width * FRAME.width),
  height: Math.round(height * FRAME.height),
});

/** Takes the part of a video's picture that lies in the frame; undefined before there is a picture. */
export function frameTaker(): (video: HTMLVideoElement) => ImageData | undefined {
  const canvas = document.createElement('canvas');
  const context = canvas.getContext('2d', { willReadFrequently: true, alpha: false });
  return (video) => {
    const { videoWidth, videoHeight } = video;
    if (context === null || videoWidth === 0) return undefined;
    const { x, y, width, height } = cutOf(videoWidth, videoHeight);
    if (canvas.width !== width || canvas.height !== height)
      Object.assign(canvas, { width, height });
    context.drawImage(video, x, y, width, height, 0, 0, width, height);
    return context.getImageData(0, 0, width, height);
  };
}
