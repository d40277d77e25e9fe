-- A store as version 3 wrote it: lots, bookings and what came home.
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
CREATE TABLE homecoming (
    id     INTEGER PRIMARY KEY,
    course INTEGER NOT NULL REFERENCES course (id) ON DELETE CASCADE,
    date   TEXT    NOT NULL,
    closes INTEGER NOT NULL
) STRICT;

CREATE UNIQUE INDEX homecoming_that_closes ON homecoming (course) WHERE closes;

CREATE TABLE came_home (
    homecoming INTEGER NOT NULL REFERENCES homecoming (id) ON DELETE CASCADE,
    item       TEXT    NOT NULL,
    owner      TEXT,
    back       INTEGER NOT NULL,
    care       INTEGER NOT NULL,
    broken     INTEGER NOT NULL,
    used_up    INTEGER NOT NULL,
    lost       INTEGER NOT NULL
) STRICT;

CREATE INDEX came_home_by_homecoming ON came_home (homecoming);

CREATE TABLE changed_by_homecoming (
    homecoming INTEGER NOT NULL REFERENCES homecoming (id) ON DELETE CASCADE,
    lot        INTEGER          REFERENCES lot (id) ON DELETE SET NULL,
    item       TEXT    NOT NULL,
    owner      TEXT    NOT NULL,
    good       INTEGER NOT NULL,
    care       INTEGER NOT NULL,
    broken     INTEGER NOT NULL
) STRICT;

CREATE INDEX changed_by_homecoming_by_homecoming ON changed_by_homecoming (homecoming);
CREATE INDEX changed_by_homecoming_by_lot ON changed_by_homecoming (lot);
INSERT INTO lot VALUES (1, 'Frame', 'frame', 'piece', 'Club', 'club', 6, 1, 0, 4.5, 'oak');
INSERT INTO course VALUES (7, '/courses/a.walling', 'A');
INSERT INTO course_day VALUES (7, '2027-04-24');
INSERT INTO booking VALUES (7, 'frame', 'Frame', 8);
INSERT INTO course VALUES (8, '/courses/b.walling', 'B');
INSERT INTO course_day VALUES (8, '2027-04-25');
INSERT INTO booking VALUES (8, 'frame', 'Frame', 2);
INSERT INTO homecoming VALUES (1, 8, '2027-04-26', 1);
INSERT INTO came_home VALUES (1, 'Frame', NULL, 1, 1, 0, 0, 0);
INSERT INTO changed_by_homecoming VALUES (1, 1, 'Frame', 'Club', -1, 1, 0);
PRAGMA application_id = 1466657140;
PRAGMA user_version = 3;
