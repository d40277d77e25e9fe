-- What came home from a course, and what that changed in the store, so that it can be undone.
-- While a homecoming closes its course, the course's bookings hold nothing; a course that is
-- held again on later days keeps the old homecoming, which closes nothing then.
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

-- By how much the counts of a lot changed.
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
