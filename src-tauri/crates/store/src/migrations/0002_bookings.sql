-- Courses by their file, the days they last, and what each has booked.
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
