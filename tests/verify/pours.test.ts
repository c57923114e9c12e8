import { pours } from '$src/verify/pours';
import { grade } from './grade';

grade(pours);
