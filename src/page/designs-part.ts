/** The script that is loaded when a design is first kept, or where some are. */

import { DesignsView, keepDesign, takeDesigns } from './ui/designs.tsx';
import { addPart } from './ui/later.tsx';
import './styles/designs.css';

addPart('designs', { View: DesignsView, keep: keepDesign, take: takeDesigns });
