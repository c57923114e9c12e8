export const HELP = `Quietpour computes the pours of a book: how the metal front runs when a die is tilted.

  quietpour run BOOK [--cell NAME] [--json]   compute every pour of the book, or one of them
  quietpour check BOOK [--json]               say what is wrong with a book, if anything
  quietpour study BOOK [--cell NAME] --out DIR [--shard K/N]
                                              compute every point of a study, or one part of it
  quietpour merge DIR                         put the parts of a study together
  quietpour card BOOK [--cell NAME] --out FILE
                                              one page for the shop floor, to print from a browser
  quietpour help                              this text

In a clone of the project: npm run quietpour -- run static/level-or-uphill.pourbook.json

  BOOK         a file saved by the page, *.pourbook.json
  --cell NAME  the name or id of a pour, or of a compare: then the pours it compares;
               with study, the name or id of a study; with card, of a shop card or a pour
  --out FILE   with card, the page to write, e.g. card.html
  --out DIR    with study, folder for its table, JSON and, of a map, picture, named after book and study
  --shard K/N  part K of N, written as study-K-of-N.part.json; all N together merge into the same files
  --json       figures, folds and series as JSON, units in the names; wrong input as { "issues": […] }

Ends with 0 when done, 1 when the input is wrong, 2 when a pour stopped before its end.

The figures compare pours. Until they have been matched with castings of your own they are not a promise.
Molten metal burns and explodes on damp: local codes and a competent person decide, not this program.
`;
