import type { Section } from '$src/core/section/section';
import { steelAround } from '$src/report/drawing/steel';
import { layoutOf } from '$src/ui/drawing/layout';

/** The section editor's layout at this width [px]: the axis level, with measures. */
export const editorLayout = (section: Section, width: number) =>
  layoutOf(section, steelAround(section), {
    frame: 'die',
    small: false,
    dimensions: true,
    caption: false,
    start: 0,
    end: 0,
    width,
    maxHeight: 520,
    scale: null,
  });
