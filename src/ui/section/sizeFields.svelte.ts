import type { Issue } from '$src/core/issue';
import type { Section } from '$src/core/section/section';
import type { SizeEdit } from './sizeEdit';

/** Fields that change many corners by one number. */
export class SizeFields {
  #refusal: { readonly field: string; readonly issue: Issue; readonly of: Section } | null = $state.raw(null);
  /**
   * The section typing began from, and what it was made into last. Every number of one typing counts from the first: on
   * the way to 150 stands 15, and what that would have pushed together does not part again.
   */
  #base: Section | null = null;
  #made: { readonly section: Section; readonly field: string } | null = null;

  /** What a number typed in a field comes to; null where it is refused. The section is as it stands now. */
  give(field: string, section: Section, edit: (from: Section) => SizeEdit): Section | null {
    if (this.#base === null || this.#made?.section !== section || this.#made.field !== field)
      this.#base = section;
    const result = edit(this.#base);
    this.#refusal = 'issue' in result ? { field, issue: result.issue, of: section } : null;
    if ('issue' in result) return null;
    this.#made = { section: result.section, field };
    return result.section;
  }

  /** Why the last number typed in a field was refused, as long as the section is the same. */
  issue(field: string, section: Section): Issue | null {
    const refusal = this.#refusal;
    return refusal?.field === field && refusal.of === section ? refusal.issue : null;
  }
}
