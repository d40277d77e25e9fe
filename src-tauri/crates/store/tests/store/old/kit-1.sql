-- A store as version 1 wrote it: lots alone.
CREATE TABLE lot (
    id        INTEGER PRIMARY KEY,
    item      TEXT    NOT NULL CHECK (item <> ''),
    item_key  TEXT    NOT NULL,
    unit      TEXT    NOT NULL,
    owner     TEXT    NOT NULL,
    owner_key TEXT    NOT NULL,
    good      INTEGER NOT NULL CHECK (0 <= good),
    care      INTEGER NOT NULL CHECK (0 <= care),
    broken    INTEGER NOT NULL CHECK (0 <= broken),
    mass_kg   REAL             CHECK (0 <= mass_kg),
    note      TEXT    NOT NULL,
    UNIQUE (item_key, owner_key)
) STRICT;
INSERT INTO lot VALUES (1, 'Frame', 'frame', 'piece', 'Club', 'club', 6, 1, 0, 4.5, 'oak');
PRAGMA application_id = 1466657140;
PRAGMA user_version = 1;
