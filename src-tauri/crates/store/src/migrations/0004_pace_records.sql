-- The pace book: how long each stage of a course took. A course is known by its file, as with
-- bookings, but what was learned from it stays when its kit is released. One record of a course
-- counts, the newest; those before it are kept so that a record can be taken back.
CREATE TABLE pace_record (
    id          INTEGER PRIMARY KEY,
    path        TEXT    NOT NULL,
    title       TEXT    NOT NULL,
    first_day   TEXT    NOT NULL,
    recorded_on TEXT    NOT NULL,
    counts      INTEGER NOT NULL
) STRICT;

CREATE UNIQUE INDEX pace_record_that_counts ON pace_record (path) WHERE counts;
CREATE INDEX pace_record_by_path ON pace_record (path, id);

-- Working minutes; tied: pairs that a string ties together, nothing where nobody waits for one.
CREATE TABLE pace_record_stage (
    record        INTEGER NOT NULL REFERENCES pace_record (id) ON DELETE CASCADE,
    place         INTEGER NOT NULL,
    stage         TEXT    NOT NULL CHECK (stage <> ''),
    usual_minutes REAL    NOT NULL CHECK (0 < usual_minutes),
    taken_minutes REAL    NOT NULL CHECK (0 < taken_minutes),
    tied          REAL             CHECK (1 <= tied),
    PRIMARY KEY (record, place),
    UNIQUE (record, stage)
) STRICT, WITHOUT ROWID;
