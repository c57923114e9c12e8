/** How the page is lit: as the machine says, or as chosen here. */
export type ThemeChoice = 'machine' | 'light' | 'dark';

const KEY = 'quietpour.theme';

function isChoice(text: string | null): text is ThemeChoice {
  return text === 'machine' || text === 'light' || text === 'dark';
}

function storedChoice(): ThemeChoice {
  try {
    const stored = localStorage.getItem(KEY);
    return isChoice(stored) ? stored : 'machine';
  } catch {
    return 'machine';
  }
}

class Theme {
  choice: ThemeChoice = $state('machine');

  /** Call once in the browser: reads the stored choice and follows the machine. Returns the undoing. */
  start(): () => void {
    this.choice = storedChoice();
    const machine = matchMedia('(prefers-color-scheme: dark)');
    const follow = () => this.#apply();
    machine.addEventListener('change', follow);
    this.#apply();
    return () => machine.removeEventListener('change', follow);
  }

  choose(choice: ThemeChoice): void {
    this.choice = choice;
    try {
      localStorage.setItem(KEY, choice);
    } catch {
      // Private windows may refuse storage; the choice then lasts until the page is closed.
    }
    this.#apply();
  }

  #apply(): void {
    const machineIsDark = matchMedia('(prefers-color-scheme: dark)').matches;
    const dark = this.choice === 'dark' || (this.choice === 'machine' && machineIsDark);
    document.documentElement.dataset['theme'] = dark ? 'dark' : 'light';
  }
}

export const theme = new Theme();
