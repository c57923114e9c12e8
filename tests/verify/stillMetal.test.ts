import { stillMetal } from '$src/verify/stillMetal';
import { grade } from './grade';

grade(stillMetal);
