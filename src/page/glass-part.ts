/** The script that is loaded when a swag is first shown at its true size. */

import { addPart } from './ui/later.tsx';
import { openTrueSize, TrueSize } from './ui/true-size.tsx';
import './styles/glass.css';

addPart('glass', { View: TrueSize, open: openTrueSize });
