import { basins } from '$src/verify/basin';
import { grade } from './grade';

grade(basins);
