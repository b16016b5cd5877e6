/** The script that is loaded when a class is first asked for. */

import { ClassView, openClass } from './ui/class.tsx';
import { addPart } from './ui/later.tsx';
import './styles/class.css';

addPart('class', { View: ClassView, open: openClass });
