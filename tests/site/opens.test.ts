import { expect, test } from 'vitest';
import { useSite } from './helpers/openPage';

const openPage = useSite();

test('the page opens under its content policy', async () => {
  const page = await openPage();
  await expect.poll(() => page.title()).toContain('Quietpour');
});
