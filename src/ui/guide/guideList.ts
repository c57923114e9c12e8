/** A document that the guide shows: its name in the address, its file from the top of the project, and what it is for. */
export interface Listed {
  readonly name: string;
  readonly file: string;
  readonly title: string;
  readonly about: string;
}

interface Group {
  readonly heading: string;
  readonly pages: readonly Listed[];
}

const inDocs = (name: string, title: string, about: string): Listed => ({
  name,
  file: `docs/${name}.md`,
  title,
  about,
});

/** What the guide holds, in the order it is read. */
export const GUIDE: readonly Group[] = [
  {
    heading: 'To begin with',
    pages: [
      inDocs(
        'user-guide',
        'User guide',
        'From a first pour to a card for the machine, task by task, with pictures.',
      ),
      inDocs(
        'glossary',
        'Glossary',
        'A line for each word of the bench and of the trade, and the kinds of fold as drawings.',
      ),
      inDocs(
        'what-the-numbers-mean',
        'What the numbers mean',
        'Each figure, how far to believe it, and what is left out.',
      ),
      {
        name: 'about',
        file: 'README.md',
        title: 'About Quietpour',
        about: 'What it is for, what it leaves out, and cautions before you pour.',
      },
    ],
  },
  {
    heading: 'In the shop and in class',
    pages: [
      inDocs('machine', 'The tilting machine', 'Hinge, weight, damper and valve; what the machine can do.'),
      inDocs(
        'studies',
        'Studies and the pour window',
        'Many pours over a range, and how far a setting may stray.',
      ),
      inDocs('shop-card', 'Shop card', 'One page for the machine: what stands on it and why.'),
      inDocs(
        'keeping-and-sharing',
        'Keeping and sharing',
        'Where books are kept, files, links and pages that play.',
      ),
      inDocs('teaching', 'Notes for teachers', 'Books for a class, guesses before results, locked cells.'),
    ],
  },
  {
    heading: 'Behind the figures',
    pages: [
      inDocs('model', 'The model', 'What is solved, and what is assumed.'),
      inDocs('heat', 'Heat', 'How metal cools, freezes and laps, with its sources.'),
      inDocs(
        'verification',
        'Verification',
        'Every figure that is checked, against what, and what is not met. Long: it comes from the server when it is first read.',
      ),
      inDocs('conventions', 'Conventions', 'Axes, signs, units and exact words.'),
      inDocs('book-file', 'The book file', 'What stands in a file of a book.'),
      inDocs('batch-recipe', 'A large study on several machines', 'From the command line, in shards.'),
      inDocs('changelog', 'What has changed', 'What users notice, newest first.'),
    ],
  },
  {
    heading: 'How it is made',
    pages: [
      inDocs('overview', 'Overview of the program', 'Its parts, and where to begin reading its source.'),
      {
        name: 'contributors',
        file: 'DEVELOPERS.md',
        title: 'For contributors',
        about: 'Set-up, layers, how to add, and what a review asks.',
      },
    ],
  },
];
