-- Lots of kit: so many of an item that one person owns.
-- The keys are the names in small letters with single spaces; they are what is unique.
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
