/** The worker for fills and PDF, loaded when the first of them is wanted. */

import { serve } from './engine/serve.ts';
import { THOROUGH } from './engine/thorough.ts';

serve(THOROUGH);
