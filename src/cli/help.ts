export const HELP = `Quietpour computes the pours of a book: how the metal front runs when a die is tilted.

  quietpour run BOOK [--cell NAME] [--json]   compute every pour of the book, or one of them
  quietpour check BOOK [--json]               say what is wrong with a book, if anything
  quietpour help                              this text

In a clone of the project: npm run quietpour -- run static/level-or-uphill.pourbook.json

  BOOK         a file saved by the page, *.pourbook.json
  --cell NAME  the name or id of a pour, or of a compare: then the pours it compares
  --json       figures, folds and series as JSON, units in the names; wrong input as { "issues": […] }

Ends with 0 when done, 1 when the input is wrong, 2 when a pour stopped before its end.

The figures compare pours. Until they have been matched with castings of your own they are not a promise.
Molten metal burns and explodes on damp: local codes and a competent person decide, not this program.
`;
