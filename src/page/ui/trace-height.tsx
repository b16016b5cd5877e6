/** How high the camera was over the capture sheet: of a thick template it sees the upper edge. */

import { lengthSaid } from './by-hand.ts';
import { Figure } from './trace-lines.tsx';
import { LEAST_HEIGHT, say, tracing } from './tracing.ts';

export const CameraHeight = () => {
  const height = tracing.value?.height ?? '';
  const mm = lengthSaid(height);
  return (
    <>
      <Figure
        label="How high the camera was over the sheet"
        placeholder="such as 16 in"
        value={height}
        onType={(typed) => say({ height: typed }, 'height')}
      />
      <p class="hint">
        {typeof mm === 'number' && mm < LEAST_HEIGHT
          ? 'From nearer than 6 in no camera shows the whole sheet.'
          : 'Only where the acrylic itself lay on the sheet, and not a line drawn round it. Held level over its middle the camera sees the upper edge all round.'}
      </p>
    </>
  );
};
