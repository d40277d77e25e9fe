-- A store as version 2 wrote it: lots and bookings.
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
CREATE TABLE course (
    id    INTEGER PRIMARY KEY,
    path  TEXT NOT NULL UNIQUE,
    title TEXT NOT NULL
) STRICT;

CREATE TABLE course_day (
    course INTEGER NOT NULL REFERENCES course (id) ON DELETE CASCADE,
    date   TEXT    NOT NULL,
    PRIMARY KEY (course, date)
) STRICT, WITHOUT ROWID;

CREATE INDEX course_day_date ON course_day (date);

CREATE TABLE booking (
    course   INTEGER NOT NULL REFERENCES course (id) ON DELETE CASCADE,
    item_key TEXT    NOT NULL,
    item     TEXT    NOT NULL,
    count    INTEGER NOT NULL CHECK (0 < count),
    PRIMARY KEY (course, item_key)
) STRICT, WITHOUT ROWID;

CREATE INDEX booking_item ON booking (item_key, count);
INSERT INTO lot VALUES (1, 'Frame', 'frame', 'piece', 'Club', 'club', 6, 1, 0, 4.5, 'oak');
INSERT INTO course VALUES (7, '/courses/a.walling', 'A');
INSERT INTO course_day VALUES (7, '2027-04-24');
INSERT INTO booking VALUES (7, 'frame', 'Frame', 8);
PRAGMA application_id = 1466657140;
PRAGMA user_version = 2;
