/** The script that is loaded when a design is first shown on a projector. */

import { addPart } from './ui/later.tsx';
import { openProjector, Projector } from './ui/projector.tsx';
import './styles/projector.css';

addPart('projector', { View: Projector, open: openProjector });
