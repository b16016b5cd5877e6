/** The script that is loaded when the fills are first unfolded. */

import { FillFigures } from './ui/fill-figures.tsx';
import { addPart } from './ui/later.tsx';
import './styles/fills.css';

addPart('fills', { View: FillFigures });
