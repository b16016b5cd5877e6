/** The parts of a quilt by their names: the one that is open is worked on, and the others stay as they are. */

import { openPartNamed, partNames, partNow } from './store.ts';

export const Parts = () =>
  partNames.value.length === 0 ? null : (
    <nav class="parts" aria-label="Parts of the quilt">
      <p>This quilt has parts. The one that you choose is open:</p>
      <div class="steps">
        {partNames.value.map((name) => (
          <button
            key={name}
            type="button"
            aria-pressed={name === partNow.value}
            onClick={() => openPartNamed(name)}
          >
            {name}
          </button>
        ))}
      </div>
    </nav>
  );
