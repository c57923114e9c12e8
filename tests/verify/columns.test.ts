import { columns } from '$src/verify/columns';
import { grade } from './grade';

grade(columns);
