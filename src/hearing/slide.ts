/** Slides a template along the stream: after every step, how well does the stream up to now end with this template, and where would it have begun? */
/** Normalised vectors of one take, row-major [step][dim]. */
export interface Template {
  readonly steps: number;
  readonly values: Float32Array;
}

/** A stretch this much shorter or longer than the template is another word, whatever it sounds like. */
const SHORTEST_SHARE = 0.5;
const LONGEST_SHARE = 2;
/** What such a stretch costs on top: about the distance between two different words. */
const MISFIT_COST = 0.15;

export interface Slider {
  /** Mean distance along the best alignment that ends now. */
  cost: number;
  /** The step at which that alignment began. */
  startedAtStep: number;
  /** Takes the distances of the stream's next vector to all rows; this template's begin at `offset`. */
  step(distances: Float32Array, offset: number): void;
}

/**
 * Dynamic time warping with a free beginning (steps weigh 1-2-1; Sakoe & Chiba 1978). Sums are compared by their mean, so that a late beginning
 * is not cheaper merely for being short.
 */
export function createSlider(length: number): Slider {
  let sum = new Float64Array(length).fill(1e9);
  let weight = new Float64Array(length).fill(1);
  let start = new Int32Array(length);
  let nextSum = new Float64Array(length);
  let nextWeight = new Float64Array(length);
  let nextStart = new Int32Array(length);
  let now = -1;

  function begin(distance: number): void {
    const stays = ((sum[0] as number) + distance) / ((weight[0] as number) + 1) < distance;
    nextSum[0] = stays ? (sum[0] as number) + distance : 2 * distance;
    nextWeight[0] = stays ? (weight[0] as number) + 1 : 2;
    nextStart[0] = stays ? (start[0] as number) : now;
  }

  function go(j: number, distance: number): void {
    let s = (sum[j - 1] as number) + 2 * distance;
    let w = (weight[j - 1] as number) + 2;
    let from = start[j - 1] as number;
    const waitSum = (sum[j] as number) + distance;
    const waitWeight = (weight[j] as number) + 1;
    if (waitSum * w < s * waitWeight) {
      s = waitSum;
      w = waitWeight;
      from = start[j] as number;
    }
    const skipSum = (nextSum[j - 1] as number) + distance;
    const skipWeight = (nextWeight[j - 1] as number) + 1;
    if (skipSum * w < s * skipWeight) {
      s = skipSum;
      w = skipWeight;
      from = nextStart[j - 1] as number;
    }
    nextSum[j] = s;
    nextWeight[j] = w;
    nextStart[j] = from;
  }

  const slider: Slider = {
    cost: Infinity,
    startedAtStep: 0,
    step(distances, offset) {
      now++;
      for (let j = 0; j < length; j++) {
        const distance = distances[offset + j] as number;
        if (j === 0) begin(distance);
        else go(j, distance);
      }
      [sum, nextSum, weight, nextWeight, start, nextStart] = [nextSum, sum, nextWeight, weight, nextStart, start];
      slider.startedAtStep = start[length - 1] as number;
      const taken = now - slider.startedAtStep + 1;
      const misfit = taken < SHORTEST_SHARE * length || taken > LONGEST_SHARE * length + 1;
      slider.cost = (sum[length - 1] as number) / (weight[length - 1] as number) + (misfit ? MISFIT_COST : 0);
    },
  };
  return slider;
}
