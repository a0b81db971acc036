-- form 90
CREATE TABLE counter (name TEXT PRIMARY KEY, value INTEGER NOT NULL) STRICT, WITHOUT ROWID;
CREATE TABLE setting (name TEXT PRIMARY KEY, value TEXT NOT NULL) STRICT, WITHOUT ROWID;
CREATE TABLE shoot ( key INTEGER PRIMARY KEY, id TEXT NOT NULL UNIQUE CHECK (id <> ''), revision INTEGER NOT NULL CHECK (revision >= 1), name TEXT NOT NULL, made_at INTEGER NOT NULL, document TEXT NOT NULL ) STRICT;
CREATE TABLE spot ( key INTEGER PRIMARY KEY, id TEXT NOT NULL UNIQUE CHECK (id <> ''), shoot_id TEXT NOT NULL REFERENCES shoot (id) ON DELETE CASCADE DEFERRABLE INITIALLY DEFERRED, revision INTEGER NOT NULL CHECK (revision >= 1), rank REAL NOT NULL, name TEXT NOT NULL, status TEXT NOT NULL, stars INTEGER NOT NULL CHECK (stars BETWEEN 0 AND 5), lat REAL NOT NULL CHECK (lat BETWEEN -90 AND 90), lon REAL NOT NULL CHECK (lon >= -180 AND lon < 180), document TEXT NOT NULL ) STRICT;
CREATE INDEX spot_at ON spot (key, lat, lon);
CREATE INDEX spot_by_shoot ON spot (shoot_id, rank);
CREATE VIRTUAL TABLE spot_find USING fts5 ( words, content = 'spot_words', content_rowid = 'key', tokenize = 'ascii', detail = none, columnsize = 0 );
CREATE VIRTUAL TABLE spot_place USING rtree (key, west, east, south, north);
CREATE TABLE spot_words (key INTEGER PRIMARY KEY, words TEXT NOT NULL) STRICT;
CREATE TABLE word (key INTEGER PRIMARY KEY, word TEXT NOT NULL UNIQUE) STRICT;
CREATE VIRTUAL TABLE word_part USING fts5 ( word, content = 'word', content_rowid = 'key', tokenize = 'trigram case_sensitive 1', detail = none, columnsize = 0 );
