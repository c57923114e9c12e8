import { damBreaks } from '$src/verify/damBreak';
import { grade } from './grade';

grade(damBreaks);
