import { isTextField } from './isTextField';

type TextField = HTMLInputElement | HTMLTextAreaElement;

/** The field for text that has the focus, what stood in it when it got that, and whether it was typed into since. */
let field: EventTarget | null = null;
let before = '';
let isTyped = false;

function begin(target: EventTarget | null): void {
  field = isTextField(target) ? target : null;
  before = field ? (field as TextField).value : '';
  isTyped = false;
}

/** Watches what is typed. Call once. */
export function watchTyping(): void {
  begin(document.activeElement);
  // What was typed into it before is not known.
  isTyped = field !== null;
  before = '';
  addEventListener('focusin', ({ target }) => begin(target));
  addEventListener('input', ({ target }) => {
    isTyped ||= target === field;
  });
  // A number that was given with Enter is a change of the book, and its field may write it another way.
  addEventListener(
    'keydown',
    ({ key, target }) => {
      if (key === 'Enter' && target instanceof HTMLInputElement) begin(target);
    },
    true,
  );
}

/** Was typed into since it got the focus, whatever stands in it now. */
export const isTypedInto = (target: EventTarget | null): boolean => isTyped && target === field;

/** Holds what was typed: the browser takes it back piece by piece. */
export const holdsTyping = (target: EventTarget | null): boolean =>
  isTypedInto(target) && (target as TextField).value !== before;

/** What stands in the field now is as good as what stood there when it got the focus. */
export const forgetTyping = (): void => begin(field);
