/** The worker that answers at once. */

import { QUICK } from './engine/quick.ts';
import { serve } from './engine/serve.ts';

serve(QUICK);
