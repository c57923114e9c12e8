import { error } from '@sveltejs/kit';
import { GUIDE_NAMES, guideText } from '$src/ui/guide/guideText';
import type { EntryGenerator, PageServerLoad } from './$types';

export const entries: EntryGenerator = () => GUIDE_NAMES.map((page) => ({ page }));

export const load: PageServerLoad = ({ params }) => {
  const text = guideText(params.page);
  if (!text) error(404, 'The guide has no such page.');
  return { text };
};
