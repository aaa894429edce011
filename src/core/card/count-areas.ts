/** Counts things by the place of the body that they belong to. */
import { BODY_AREAS, type BodyArea } from '../plan.ts';

export interface AreaCount {
  readonly area: BodyArea;
  readonly n: number;
}

/** In the order of the body; a place without any is left out. */
export function countAreas(areas: readonly BodyArea[]): readonly AreaCount[] {
  return BODY_AREAS.map((area) => ({ area, n: areas.filter((each) => each === area).length })).filter(({ n }) => n > 0);
}
