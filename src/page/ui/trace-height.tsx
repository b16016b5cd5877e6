/** How high the camera was over the capture sheet: of a thick template it sees the upper edge. */

import { traceWords } from '../words/words.ts';
import { lengthSaid } from './by-hand.ts';
import { Figure } from './trace-lines.tsx';
import { LEAST_HEIGHT, say, tracing } from './tracing.ts';

export const CameraHeight = () => {
  const height = tracing.value?.height ?? '';
  const mm = lengthSaid(height);
  return (
    <>
      <Figure
        label={traceWords.height.label}
        placeholder={traceWords.height.example}
        value={height}
        onType={(typed) => say({ height: typed }, 'height')}
      />
      <p class="hint">
        {typeof mm === 'number' && mm < LEAST_HEIGHT ? traceWords.height.tooNear : traceWords.height.hint}
      </p>
    </>
  );
};
