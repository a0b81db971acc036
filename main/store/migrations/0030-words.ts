/** Words for finding: each spot's folded text, the words by spot, and the parts of words by three letters. */
import type { Migration } from '#main/store/migration.ts'

export const words: Migration = {
  form: 30,
  // Left empty here: the texts are folded by the program, which fills them in whenever its way of folding is new.
  script: `
    CREATE TABLE spot_words (key INTEGER PRIMARY KEY, words TEXT NOT NULL) STRICT;
    CREATE VIRTUAL TABLE spot_find USING fts5 (
      words, content = 'spot_words', content_rowid = 'key', tokenize = 'ascii', detail = none, columnsize = 0
    );
    CREATE TABLE word (key INTEGER PRIMARY KEY, word TEXT NOT NULL UNIQUE) STRICT;
    CREATE VIRTUAL TABLE word_part USING fts5 (
      word, content = 'word', content_rowid = 'key', tokenize = 'trigram case_sensitive 1', detail = none, columnsize = 0
    );
  `,
}
