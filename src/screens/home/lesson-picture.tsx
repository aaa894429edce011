/** The picture of the first screen, drawn from an invented session. Fetched after the words: it brings the engine and the stairs. */
import { useState } from 'react';
import { inventedSession } from '../picture/invented.ts';
import { Stairs } from '../picture/stairs.tsx';

export function LessonPicture() {
  const [invented] = useState(inventedSession);
  return <Stairs variant="strip" reps={invented.reps} steps={invented.standing.steps} />;
}
